/** Hands a value to the person as a JSON file, named without signs that a disk refuses. */
export function saveJson(name: string, value: unknown): void {
  saveText(name, JSON.stringify(value, null, 2), 'application/json');
}

/** Hands a text to the person as a file. */
export function saveText(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name.replace(/[\\/:*?"<>|]+/g, '-');
  link.click();
  URL.revokeObjectURL(address);
}
