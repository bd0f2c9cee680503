/** Takes the keyboard to the head of the screen, where the new answer stands, after the control in use went away. */
export function focusQuestion(): void {
  document.getElementById("question")?.focus();
}
