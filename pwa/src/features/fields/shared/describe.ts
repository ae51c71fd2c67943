import { getIn } from '../../../app/paths';
import { numberText, show, type UnitChoice } from '../../../app/units';
import type {
  FieldDescription,
  KeepOutReason,
  ObstacleKind,
  ProfilePoint,
  Quantity,
  Surface,
} from '../../../app/wire';
import { words } from '../../../app/words';
import { areaOf, headingOf, lengthOf, type Part } from './parts';

const w = words.fields;

/** What a part is called on the page. */
export const titleOf = (part: Part): string => part.name || w.kinds[part.kind];

const heading = (degrees: number): string => `${String(Math.round(degrees) % 360).padStart(3, '0')}°`;

/** How large a part is, in words. */
export function sizeOf(field: FieldDescription, part: Part, units: UnitChoice): string {
  const metres = (v: number): string => show(v, 'm', units);
  if (part.kind === 'strips') {
    const width = (getIn(field, `${part.path}.widthMeters`) as Quantity | undefined)?.value;
    return w.size.strip(metres(lengthOf(part)), show(width, 'm', units), heading(headingOf(part)));
  }
  if (part.kind === 'launchSpots') {
    const to = getIn(field, `${part.path}.headingDegrees`) as number | undefined;
    return to === undefined ? w.size.spot : w.size.towards(heading(to));
  }
  if (part.corners.length < 2) return w.size.spot;
  if (!part.closed) return w.size.line(metres(lengthOf(part)));
  const area = areaOf(part);
  return w.size.area(area >= 10000 ? w.hectares(numberText(area / 10000)) : `${numberText(area)}\u00a0m²`);
}

/** What else counts about a part: an obstacle's height, a surface, a reason. */
export function moreOf(field: FieldDescription, part: Part, units: UnitChoice): string {
  const at = (name: string): unknown => getIn(field, `${part.path}.${name}`);
  const height = (at('heightMeters') as Quantity | undefined)?.value;
  const surface = at('surface') as Surface | undefined;
  const ground = ((at('groundProfile') as ProfilePoint[] | undefined) ?? []).map((g) => g.heightMeters ?? 0);
  const reason = at('reason') as KeepOutReason | undefined;
  return [
    part.kind === 'obstacles'
      ? words.obstacle[(at('kind') as ObstacleKind) ?? 'OBSTACLE_KIND_UNSPECIFIED']
      : '',
    height === undefined ? '' : w.high(show(height, 'm', units)),
    surface ? w.surfaces[surface] : '',
    reason ? w.reasons[reason] : '',
    ground.length > 0
      ? w.ground(show(Math.min(...ground), 'm', units), show(Math.max(...ground), 'm', units))
      : '',
  ]
    .filter((t) => t !== '')
    .join(', ');
}
