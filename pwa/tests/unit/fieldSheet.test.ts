import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/app/wire';
import { stripGeometry } from '../../src/drawings/stripGeometry';
import {
  decidingLine,
  failureCurves,
  findingOf,
  findingsOf,
} from '../../src/features/field-sheet/fieldSheet';
import { inQuietHours } from '../../src/features/field-sheet/quiet';
import { alongSpan, curvesOf } from '../../src/features/model-sheet/sheet';

const report: Report = {
  findings: [
    { id: 'link_loss.footprint', title: 'Nearest people', verdict: 'VERDICT_FAILS', note: 'It reaches 3 m.' },
    { id: 'climb.clearance', title: 'Clearance', verdict: 'VERDICT_HOLDS' },
    { id: 'engine_out.reach', title: 'Reach', verdict: 'VERDICT_HOLDS' },
    { id: 'launch.abort', title: 'Given up', verdict: 'VERDICT_HOLDS' },
  ],
  curves: [
    { id: 'lift.curve' },
    { id: 'engine_out.turn_back' },
    { id: 'weather.window' },
    { id: 'structure.moment' },
  ],
};

describe('the field sheet', () => {
  it('says of a part what its worst finding says', () => {
    expect(decidingLine(report, 'failures', 'none')).toBe('Nearest people: fails. It reaches 3 m.');
    expect(decidingLine(report, 'launch', 'none')).toBe('Clearance: holds.');
    expect(decidingLine(report, 'landing', 'none')).toBe('none');
    expect(decidingLine(undefined, 'plan', 'none')).toBe('none');
  });

  it('takes the findings of a part in the report’s order', () => {
    expect(findingsOf(report, 'failures').map((f) => f.id)).toEqual([
      'link_loss.footprint',
      'engine_out.reach',
      'launch.abort',
    ]);
    expect(findingOf(report, 'climb.clearance')?.title).toBe('Clearance');
    expect(findingsOf(report, 'launch').map((f) => f.id)).toEqual(['climb.clearance']);
    expect(findingOf(report, 'landing.clearance')).toBeUndefined();
  });

  it('every curve stands in one sheet only', () => {
    expect(failureCurves(report).map((c) => c.id)).toEqual(['engine_out.turn_back']);
    expect(curvesOf(report, 'lift').map((c) => c.id)).toEqual(['lift.curve', 'structure.moment']);
  });
});

describe('the diagram along the span', () => {
  it('leaves the fins out, and nothing that merely begins alike', () => {
    const curve = {
      id: 'lift.span_loading',
      series: ['wing', 'fin', 'fin, section limit', 'finlet'].map((name) => ({ name })),
    };
    const model = {
      surfaces: [
        { name: 'wing', role: 'SURFACE_ROLE_WING' as const },
        { name: 'fin', role: 'SURFACE_ROLE_FIN' as const },
        { name: 'finlet', role: 'SURFACE_ROLE_WINGLET' as const },
      ],
    };
    expect(alongSpan(curve, model).series?.map((s) => s.name)).toEqual(['wing', 'finlet']);
    const other = { ...curve, id: 'lift.curve' };
    expect(alongSpan(other, model)).toBe(other);
  });
});

describe('quiet hours', () => {
  const at = (hour: number, minute = 0): string =>
    `2026-05-18T${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}:00+09:00`;

  it.each([
    [9, 59, true],
    [10, 0, false],
    [18, 59, false],
    [19, 0, true],
    [0, 0, true],
  ])('over midnight, at %i:%i', (hour, minute, quiet) => {
    const permission = { quietFrom: '19:00', quietTo: '10:00' };
    expect(inQuietHours(permission, at(hour, minute))).toBe(quiet);
  });

  it('within a day, and none where they are not given', () => {
    expect(inQuietHours({ quietFrom: '12:30', quietTo: '14:00' }, at(13))).toBe(true);
    expect(inQuietHours({ quietFrom: '12:30', quietTo: '14:00' }, at(14))).toBe(false);
    expect(inQuietHours({ quietFrom: '12:30' }, at(13))).toBe(false);
    expect(inQuietHours(undefined, at(13))).toBe(false);
  });
});

describe('strips that are compared', () => {
  it('lie on the scale they share', () => {
    const strip = stripGeometry({ value: 5, limit: 10, limitSense: 'LIMIT_SENSE_AT_LEAST' }, 100, [0, 20]);
    expect(strip.tick).toBe(25);
    expect(strip.posts[0]?.x).toBe(50);
  });
});
