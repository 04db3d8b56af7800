// A phone's keyboard tells what it typed as input to a field and not as keys,
// and the toolkit hears keys. The hidden field that the toolkit focuses turns
// the one into the other. It always holds one space, so that there is
// something to delete.
(() => {
  "use strict";
  const field = document.getElementById("dummyEntry");
  const HELD = " ";
  const reset = () => { field.value = HELD; field.setSelectionRange(1, 1); };

  function key(name) {
    const init = { key: name, code: name.length === 1 ? "" : name, bubbles: true, cancelable: true };
    document.dispatchEvent(new KeyboardEvent("keydown", init));
    document.dispatchEvent(new KeyboardEvent("keyup", init));
  }

  field.addEventListener("focus", reset);
  field.addEventListener("input", (e) => {
    if (e.isComposing) return;
    take(e.inputType);
  });
  field.addEventListener("compositionend", () => take("insertText"));

  function take(kind) {
    if (kind === "deleteContentBackward" || field.value.length < HELD.length) key("Backspace");
    else if (kind === "insertLineBreak") key("Enter");
    else for (const letter of field.value.slice(HELD.length)) key(letter);
    reset();
  }

  // While a keyboard composes a word it sends keys without a name.
  addEventListener("keydown", (e) => {
    if (e.isTrusted && (e.isComposing || e.keyCode === 229 || e.key === "Unidentified")) e.stopPropagation();
  }, true);
})();
