/** Hands `blob` to the person as a download. */
export function saveFile(blob: Blob, name: string): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click returns.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
