// @ts-check
// The check at the end of the first shift: says at once what is right, counts, and keeps the choices on this device.

const KEY = "first-shift-check";

/** @returns {Record<string, string>} what was chosen, by question; empty where the browser keeps nothing */
function kept() {
  try {
    const read = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return read && typeof read === "object" ? read : {};
  } catch {
    return {};
  }
}

/** @param {Record<string, string>} chosen */
function keep(chosen) {
  try {
    if (Object.keys(chosen).length) localStorage.setItem(KEY, JSON.stringify(chosen));
    else localStorage.removeItem(KEY);
  } catch {
    // a private window: the answers last as long as the page
  }
}

/** @param {HTMLFormElement} form */
function start(form) {
  const questions = [...form.querySelectorAll("fieldset")];
  const score = /** @type {HTMLElement} */ (form.querySelector(".self-check-score"));
  const again = /** @type {HTMLButtonElement} */ (form.querySelector("[data-again]"));
  const print = /** @type {HTMLButtonElement} */ (form.querySelector("[data-print]"));

  /** @param {HTMLFieldSetElement} question */
  const choice = (question) =>
    /** @type {HTMLInputElement | null} */ (question.querySelector("input:checked"))?.value ?? "";

  /** @param {HTMLFieldSetElement} question */
  function show(question) {
    const chosen = choice(question);
    const right = chosen === question.dataset.right;
    const verdict = /** @type {HTMLElement} */ (question.querySelector(".self-check-verdict"));
    const answer = /** @type {HTMLDetailsElement} */ (question.querySelector("details"));
    question.dataset.state = chosen ? (right ? "right" : "wrong") : "";
    verdict.textContent = chosen ? (right ? "Right." : "Not this one. Read why.") : "";
    answer.open = Boolean(chosen);
  }

  function count() {
    const answered = questions.filter((question) => choice(question)).length;
    const right = questions.filter((question) => choice(question) === question.dataset.right).length;
    const done = answered === questions.length;
    again.hidden = answered === 0;
    print.hidden = !done;
    const next = right === answered ? "" : " Read the pages behind the others, and ask your trainer.";
    score.textContent = !answered
      ? ""
      : done
        ? `${right} of ${questions.length} right.${next}`
        : `${answered} of ${questions.length} answered.`;
  }

  const before = kept();
  for (const question of questions) {
    const name = question.dataset.question ?? "";
    for (const input of question.querySelectorAll("input")) input.checked = input.value === before[name];
    show(question);
  }
  count();

  form.addEventListener("change", (event) => {
    const question = /** @type {HTMLElement} */ (event.target).closest("fieldset");
    if (!question) return;
    show(question);
    count();
    keep(Object.fromEntries(questions.map((one) => [one.dataset.question ?? "", choice(one)]).filter(([, value]) => value)));
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  again.addEventListener("click", () => {
    form.reset();
    for (const input of form.querySelectorAll("input")) input.checked = false;
    questions.forEach(show);
    count();
    keep({});
    form.querySelector("input")?.focus();
  });
  print.addEventListener("click", () => {
    const only = document.documentElement.classList;
    only.add("only-check");
    window.addEventListener("afterprint", () => only.remove("only-check"), { once: true });
    window.print();
  });
}

const form = document.getElementById("self-check");
if (form instanceof HTMLFormElement) start(form);
