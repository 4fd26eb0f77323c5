// Written for any browser, however old: says so where the calculator's own script did not come or is not understood,
// and keeps the form from loading the page anew, which would lose what was typed.
(function () {
  function look() {
    if (window.customElements && customElements.get("calc-form")) return;
    var forms = document.querySelectorAll("calc-form form");
    for (var i = 0; i < forms.length; i += 1) {
      forms[i].parentNode.setAttribute("data-late", "");
      var status = forms[i].querySelector("[data-status]");
      if (status) {
        status.textContent =
          "The live calculator did not start. The answer shown is for the example values. A part of it did not come, or this " +
          "browser is too old for it. Note what you have typed, then reload the page; or use the table below.";
      }
      forms[i].addEventListener("submit", function (event) {
        event.preventDefault();
      });
    }
  }
  if (document.readyState === "complete") look();
  else window.addEventListener("load", look);
})();
