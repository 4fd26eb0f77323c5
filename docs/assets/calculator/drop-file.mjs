// @ts-check
// A file chooser and drop zone for a text field. It only writes the file's text into the field; it has no name.

const LARGEST_bytes = 5_000_000;
const STAYS = "The file stays on this device.";

/**
 * @param {ArrayBuffer} bytes
 * @returns {string | null} null when it is not text
 */
export function decode(bytes) {
  const head = new Uint8Array(bytes.slice(0, 3));
  const mark = (/** @type {number[]} */ ...want) => want.every((byte, at) => head[at] === byte);
  let text;
  if (mark(0xff, 0xfe)) text = new TextDecoder("utf-16le").decode(bytes);
  else if (mark(0xfe, 0xff)) text = new TextDecoder("utf-16be").decode(bytes);
  else {
    try {
      text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    } catch {
      // spreadsheets and loggers still write their degree signs in the old Western set
      text = new TextDecoder("windows-1252").decode(bytes);
    }
  }
  return /[\u0000-\u0008\u000e-\u001f]/.test(text) ? null : text;
}

/**
 * @param {File} file
 * @returns {Promise<{text: string} | {trouble: string}>}
 */
async function read(file) {
  if (file.size > LARGEST_bytes) return { trouble: `${file.name} is over 5 MB. Cut it to the part you need.` };
  try {
    const text = decode(await file.arrayBuffer());
    if (text === null) return { trouble: `${file.name} is not a text file. Save it as CSV and choose it again.` };
    return { text: text.replace(/\r\n?/g, "\n") };
  } catch {
    return { trouble: `${file.name} could not be read. Choose it again.` };
  }
}

/**
 * @param {HTMLTextAreaElement} area
 * @param {string} text
 */
function put(area, text) {
  area.value = text;
  area.dispatchEvent(new Event("input", { bubbles: true }));
  area.dispatchEvent(new Event("change", { bubbles: true }));
}

/** @param {HTMLTextAreaElement} area */
function addChooser(area) {
  const row = document.createElement("div");
  row.className = "calc-file";
  const chooser = document.createElement("input");
  chooser.type = "file";
  chooser.hidden = true;
  chooser.accept = ".csv,.txt,.tsv,text/plain,text/csv";
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Fill from a file";
  const words = document.createElement("span");
  words.className = "calc-hint";
  words.setAttribute("aria-live", "polite");
  words.textContent = `Choose a CSV file or drop it on the field. ${STAYS}`;
  const undo = document.createElement("button");
  undo.type = "button";
  undo.textContent = "Put the old text back";
  undo.hidden = true;
  row.append(button, undo, words, chooser);

  let before = "";
  /** @param {File | null | undefined} file */
  const take = async (file) => {
    if (!file) return;
    const got = await read(file);
    if ("trouble" in got) {
      words.textContent = `${got.trouble} The field was not changed.`;
      return;
    }
    before = area.value;
    undo.hidden = before === "";
    words.textContent = `Filled from ${file.name}. ${STAYS}`;
    put(area, got.text);
  };
  button.addEventListener("click", () => chooser.click());
  chooser.addEventListener("change", async (event) => {
    event.stopPropagation();
    const file = chooser.files?.[0];
    await take(file);
    // the same file may be chosen again after it was mended
    chooser.value = "";
  });
  chooser.addEventListener("input", (event) => event.stopPropagation());
  undo.addEventListener("click", () => {
    put(area, before);
    undo.hidden = true;
    words.textContent = "The old text is back.";
    button.focus();
  });

  const zone = area.closest(".calc-field") ?? area;
  const hasFile = (/** @type {DragEvent} */ event) => event.dataTransfer?.types.includes("Files") === true;
  zone.addEventListener("dragover", (event) => {
    if (!hasFile(/** @type {DragEvent} */ (event))) return;
    event.preventDefault();
    area.dataset.over = "";
  });
  zone.addEventListener("dragleave", () => delete area.dataset.over);
  zone.addEventListener("drop", (event) => {
    const drop = /** @type {DragEvent} */ (event);
    delete area.dataset.over;
    if (!hasFile(drop)) return;
    drop.preventDefault();
    void take(drop.dataTransfer?.files[0]);
  });
  (area.closest(".calc-entry") ?? area).after(row);
}

/** @param {HTMLFormElement} form */
export function addFileChoosers(form) {
  for (const area of form.querySelectorAll("textarea[data-takes-file]")) {
    if (area instanceof HTMLTextAreaElement) addChooser(area);
  }
}
