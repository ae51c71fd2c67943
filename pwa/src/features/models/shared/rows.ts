import { fromFieldBox, toFieldBox } from '../../../app/dates';
import { getIn } from '../../../app/paths';
import type {
  AssessmentInput,
  ModelDescription,
  Quantity,
  ScaleReading,
  WindChange,
} from '../../../app/wire';
import { words } from '../../../app/words';

export type ListName = 'scales' | 'items' | 'tanks' | 'ballast';

/** One box of a row: a text, a bare number, a quantity with its basis, one that is always measured, or a tick. */
export type Cell = {
  field: keyof typeof words.weigh.cells;
  kind: 'text' | 'number' | 'quantity' | 'measured' | 'tick';
};

type List = { path: string; most: number; cells: Cell[] };

const cell = (field: Cell['field'], kind: Cell['kind']): Cell => ({ field, kind });
const name = cell('name', 'text');
const [x, y, z] = [cell('xMeters', 'number'), cell('yMeters', 'number'), cell('zMeters', 'number')];

/** The lists of a weigh-in: where they stand in the document, how long they may be, and the boxes of a row. */
export const lists: Record<ListName, List> = {
  scales: {
    path: 'model.mass.scaleReadings',
    most: 30,
    cells: [name, cell('readingKg', 'measured'), cell('tareKg', 'number'), x, y, cell('scale', 'text')],
  },
  items: {
    path: 'model.mass.items',
    most: 200,
    cells: [name, cell('massKg', 'quantity'), x, y, z, cell('scale', 'text'), cell('movable', 'tick')],
  },
  tanks: {
    path: 'model.mass.tanks',
    most: 12,
    cells: [
      name,
      cell('capacityLiters', 'quantity'),
      x,
      y,
      z,
      cell('burnOrder', 'number'),
      cell('fillRatio', 'number'),
    ],
  },
  ballast: {
    path: 'model.mass.ballastPlaces',
    most: 12,
    cells: [name, x, z, cell('maximumMassKg', 'number')],
  },
};

/** A row of any list; every list's rows carry a name. */
export type Row = { name?: string } & Record<string, unknown>;

/** Rows of a list of the document. */
export function rowsOf(doc: AssessmentInput, list: ListName): Row[] {
  const found = getIn(doc, lists[list].path);
  return Array.isArray(found) ? (found as Row[]) : [];
}

/** The rows with a new one at the end, under a name that no other row has. */
export function withRow(rows: Row[], list: ListName): Row[] {
  const stem = words.weigh.lists[list].name;
  let n = rows.length + 1;
  while (rows.some((r) => r.name === `${stem} ${String(n)}`)) n++;
  return [...rows, { name: `${stem} ${String(n)}` }];
}

export function withoutAt<T>(rows: T[], index: number): T[] {
  return rows.filter((_, i) => i !== index);
}

/** The rows with one moved by some places, as far as the list goes. */
export function moved<T>(rows: T[], index: number, by: number): T[] {
  const to = Math.min(rows.length - 1, Math.max(0, index + by));
  const rest = withoutAt(rows, index);
  const row = rows[index];
  return row === undefined ? rows : [...rest.slice(0, to), row, ...rest.slice(to)];
}

/** A typed reading is a measurement; its spread stays if one was given. */
export function measured(value: number | undefined, before: Quantity | undefined): Quantity | undefined {
  return value === undefined ? undefined : { ...before, value, basis: 'BASIS_MEASURED' };
}

/** One scale under each wheel, at the wheel's place. */
export function scalesUnderWheels(model: ModelDescription | undefined): ScaleReading[] {
  return (model?.gear?.wheels ?? []).map((wheel, i) => ({
    name: wheel.name || `${words.weigh.lists.scales.name} ${String(i + 1)}`,
    ...(wheel.xMeters === undefined ? {} : { xMeters: wheel.xMeters }),
    ...(wheel.yMeters === undefined ? {} : { yMeters: wheel.yMeters }),
  }));
}

/** Paths of the pitch controls' greatest throws, with the control's name. */
export function pitchThrows(
  model: ModelDescription | undefined,
): { path: string; name: string; up: boolean }[] {
  const roles = ['CONTROL_ROLE_ELEVATOR', 'CONTROL_ROLE_ELEVON', 'CONTROL_ROLE_RUDDERVATOR'];
  return (model?.surfaces ?? []).flatMap((s, i) =>
    (s.controls ?? []).flatMap((c, k) => {
      if (!roles.includes(c.role ?? '')) return [];
      const at = `model.surfaces.${String(i)}.controls.${String(k)}`;
      const called = c.name ?? '';
      return [
        { path: `${at}.throwUpDegrees`, name: called, up: true },
        { path: `${at}.throwDownDegrees`, name: called, up: false },
      ];
    }),
  );
}

/** A wind one hour after the last one that has a time; without a time where none has. */
export function laterWind(changes: WindChange[]): WindChange {
  const last = changes.at(-1)?.time;
  const moment = last === undefined ? NaN : new Date(last).getTime();
  if (Number.isNaN(moment)) return {};
  // The same clock as the row before.
  const wall = new Date(new Date(`${toFieldBox(last)}Z`).getTime() + 3_600_000).toISOString();
  return { time: fromFieldBox(wall.slice(0, 16), last) ?? '' };
}
