import { getIn } from '../../../app/paths';
import type {
  AssessmentInput,
  DayConditions,
  Finding,
  LaunchMethod,
  LaunchPlan,
  Report,
  Strip,
} from '../../../app/wire';
import { words } from '../../../app/words';
import { stripPosts, type StripPost } from '../../../drawings/roseGeometry';
import { pathText } from '../../findings/findings';
import { byMethod } from './draft';

/** The ways of launching that are compared, in their order on the page. */
export const ways: LaunchMethod[] = [
  'LAUNCH_METHOD_WHEELS',
  'LAUNCH_METHOD_RAMP',
  'LAUNCH_METHOD_BUNGEE',
  'LAUNCH_METHOD_HAND',
  'LAUNCH_METHOD_CATAPULT',
];

/** A way of launching as it would be computed: its document and place, or what it still lacks. */
export type Way = { method: LaunchMethod; place: string; input: AssessmentInput; lacks: string[] };

const cosine = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);

/** Whether a strip is better run from its far end in the day's wind. */
function reversed(heading: number, day: DayConditions | undefined): boolean {
  const from = day?.windDirectionDegrees?.value;
  return from !== undefined && cosine(from - heading) < 0;
}

type Placed = { input: AssessmentInput; plan: LaunchPlan; place: string; lacks: string[] };

/** The planned strip and direction, or the field's first strip into the wind. */
function stripOf(
  input: AssessmentInput,
  plan: LaunchPlan,
): { strip: Strip; back: boolean; post: StripPost } | undefined {
  const strips = input.field?.strips ?? [];
  const strip = strips.find((s) => s.name === plan.strip) ?? strips[0];
  if (!strip) return undefined;
  const posts = stripPosts({ strips: [strip] });
  const planned = plan.strip === strip.name && plan.stripReversed !== undefined;
  const back = planned ? plan.stripReversed === true : reversed(posts[0]?.heading ?? 0, input.day);
  const post = posts[back ? 1 : 0];
  return post && { strip, back, post };
}

function onWheels(input: AssessmentInput, plan: LaunchPlan): Placed {
  const found = stripOf(input, plan);
  if (!found) return { input, plan, place: '', lacks: [words.compare.noStrip] };
  const { strip, back, post } = found;
  return {
    input,
    plan: { ...plan, strip: strip.name ?? '', stripReversed: back },
    place: post.name,
    lacks: [],
  };
}

/** The planned launch spot, or the field's first; where there is none, the start of the strip serves as one. */
function fromSpot(input: AssessmentInput, plan: LaunchPlan): Placed {
  const spots = input.field?.launchSpots ?? [];
  const spot = spots.find((s) => s.name === plan.launchSpot) ?? spots[0];
  if (spot) {
    const name = spot.name ?? '';
    return { input, plan: { ...plan, launchSpot: name }, place: name, lacks: [] };
  }
  const found = stripOf(input, plan);
  if (!found) return { input, plan, place: '', lacks: [words.compare.noSpot] };
  const name = words.compare.stripStart(found.post.name);
  const position = (found.back ? found.strip.end : found.strip.start) ?? {};
  const made = { name, position, headingDegrees: found.post.heading };
  const field = { ...input.field, launchSpots: [made] };
  return { input: { ...input, field }, plan: { ...plan, launchSpot: name }, place: name, lacks: [] };
}

/** Numbers without which a way of launching cannot be computed at all. */
const least: Partial<Record<LaunchMethod, string[]>> = {
  LAUNCH_METHOD_RAMP: [
    'launchPlan.ramp.lengthMeters',
    'launchPlan.ramp.angleDegrees',
    'launchPlan.ramp.endHeightMeters',
  ],
  LAUNCH_METHOD_BUNGEE: ['launchPlan.bungee.stiffnessNewtonsPerMeter', 'launchPlan.bungee.stretchMeters'],
  LAUNCH_METHOD_HAND: byMethod.LAUNCH_METHOD_HAND ?? [],
};

/** The same model, field and day, launched in another way. The heading follows the place. */
export function wayOf(input: AssessmentInput, method: LaunchMethod): Way {
  const { headingDegrees, ...planned } = input.launchPlan ?? {};
  const same = planned.method === method;
  const kept = { ...planned, ...(same && headingDegrees !== undefined ? { headingDegrees } : {}), method };
  const placed = method === 'LAUNCH_METHOD_WHEELS' ? onWheels(input, kept) : fromSpot(input, kept);
  const { place, lacks } = placed;
  const whole = { ...placed.input, launchPlan: placed.plan };
  const cord = (planned.bungee?.pullTest ?? []).length > 0;
  const numbers = (least[method] ?? [])
    .filter((path) => !(cord && path === 'launchPlan.bungee.stiffnessNewtonsPerMeter'))
    .filter((path) => (getIn(whole, path) as { value?: number } | undefined)?.value === undefined)
    .map((path) => pathText(path, whole));
  const gear = method === 'LAUNCH_METHOD_WHEELS' && !input.model?.gear ? [pathText('model.gear', whole)] : [];
  const forces =
    method === 'LAUNCH_METHOD_CATAPULT' && (planned.catapult?.length ?? 0) < 2
      ? [words.compare.noForces]
      : [];
  return { method, place, input: whole, lacks: [...lacks, ...gear, ...numbers, ...forces] };
}

/** What is compared: the finding that answers it, or the number that stands in where there is no limit. */
export const questions = [
  { title: words.compare.speed, findings: ['launch.end_speed', 'liftoff.margin'], quantity: undefined },
  { title: words.compare.distance, findings: ['launch.distance'], quantity: 'launch.screen_distance' },
  { title: words.compare.sink, findings: ['launch.sink'], quantity: undefined },
  { title: words.compare.clearance, findings: ['climb.clearance'], quantity: undefined },
];

export type Question = (typeof questions)[number];

/** The answer of a report to a question; a bare quantity becomes a finding without limit. */
export function answerOf(report: Report, question: Question): Finding | undefined {
  for (const id of question.findings) {
    const found = report.findings?.find((f) => f.id === id);
    if (found) return found;
  }
  const q = report.quantities?.find((x) => x.id === question.quantity);
  if (q?.value === undefined) return undefined;
  return {
    id: q.id ?? '',
    title: question.title,
    value: q.value,
    unit: q.unit ?? '1',
    limitSense: 'LIMIT_SENSE_NONE',
  };
}

/** One scale for the answers of all ways, so that strips side by side compare; undefined without a number. */
export function scaleOf(answers: (Finding | undefined)[]): [number, number] | undefined {
  const all = answers
    .flatMap((f) => [f?.value, f?.bandLow, f?.bandHigh, f?.limit, f?.upperLimit])
    .filter((v): v is number => v !== undefined && Number.isFinite(v));
  if (all.length === 0) return undefined;
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const alike = high - low <= 1e-6 * Math.max(Math.abs(high), Math.abs(low));
  const room = (alike ? Math.abs(high) * 0.2 || 1 : high - low) * 0.12;
  return [low - room, high + room];
}

/** A value as it is told beside a scale: what would not show on it is nothing. */
export function toldOn(value: number, [low, high]: [number, number]): number {
  return Math.abs(value) < (high - low) / 2000 ? 0 : value;
}

/** What the findings of the launch of a report still lack, in words, each once. */
export function lackOf(report: Report, input: AssessmentInput): string[] {
  const asked = questions.flatMap((q) => q.findings);
  const paths = (report.findings ?? [])
    .filter((f) => asked.includes(f.id ?? ''))
    .flatMap((f) => f.missing ?? []);
  return [...new Set(paths)].map((path) => pathText(path, input));
}
