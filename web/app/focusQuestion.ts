/**
 * Takes the keyboard to the head of the screen, where the new answer stands, after the panel of the control in use was
 * done with. A person who has gone on to another place meanwhile stays there.
 */
export function focusQuestion(panel: string): void {
  const now = document.activeElement;
  const isElsewhere = now !== null && now !== document.body && now.closest(`#${panel}`) === null;
  if (!isElsewhere) document.getElementById("question")?.focus();
}
