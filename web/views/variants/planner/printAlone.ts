/** Prints one part of the page by its id, without the rest. */
export function printAlone(id: string): void {
  const root = document.documentElement;
  root.dataset["printed"] = id;
  addEventListener("afterprint", () => delete root.dataset["printed"], { once: true });
  print();
}
