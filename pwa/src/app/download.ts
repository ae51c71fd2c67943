/** Hands a value to the person as a JSON file, named without signs that a disk refuses. */
export function saveJson(name: string, value: unknown): void {
  const address = URL.createObjectURL(
    new Blob([JSON.stringify(value, null, 2)], { type: 'application/json' }),
  );
  const link = document.createElement('a');
  link.href = address;
  link.download = name.replace(/[\\/:*?"<>|]+/g, '-');
  link.click();
  URL.revokeObjectURL(address);
}
