import { dotted } from '../../app/paths';

/** Every part that a path passes through, outermost first: "model", "model.mass", "model.mass.items". */
export function partsOf(path: string): string[] {
  const names = dotted(path).split('.');
  return names.slice(1).map((_, i) => names.slice(0, i + 1).join('.'));
}

const boxAt = (root: ParentNode, path: string): HTMLElement | null =>
  root.querySelector(`[data-entry="${CSS.escape(dotted(path))}"]`);

/** What is unfolded is built a turn later. */
const built = (): Promise<void> => new Promise((done) => setTimeout(done, 30));

async function unfold(root: ParentNode, selector: string): Promise<void> {
  const details = root.querySelector<HTMLDetailsElement>(selector);
  if (!details || details.open) return;
  details.open = true;
  await built();
}

/** Unfolds the form down to the box of a path, and goes there; false when the page has none. */
export async function goToBox(path: string, root: ParentNode = document): Promise<boolean> {
  if (!boxAt(root, path)) {
    await unfold(root, '[data-all-boxes]');
    for (const part of partsOf(path))
      await unfold(root, `[data-all-boxes] [data-part="${part}"], [data-all-boxes] [data-list="${part}"]`);
  }
  const box = boxAt(root, path);
  if (!box) return false;
  for (let at = box.parentElement; at; at = at.parentElement)
    if (at instanceof HTMLDetailsElement) at.open = true;
  box.scrollIntoView({ block: 'center' });
  box.querySelector<HTMLElement>('input, select, textarea')?.focus({ preventScroll: true });
  return true;
}
