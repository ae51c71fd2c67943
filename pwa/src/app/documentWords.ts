import { geometryWords } from './geometryWords';
import type { PartWords } from './partWords';
import { planWords } from './planWords';
import { systemWords } from './systemWords';

const unsaid = 'not said';

/** Words of every field of the document but those of the field, which has pages of its own. */
export const documentWords = {
  parts: { ...planWords, ...geometryWords, ...systemWords } as PartWords,
  /** What can be chosen, by name; what has words elsewhere on the page is not said again. */
  choices: {
    EngineKind: {
      ENGINE_KIND_UNSPECIFIED: unsaid,
      ENGINE_KIND_TURBINE: 'turbine',
      ENGINE_KIND_DUCTED_FAN: 'ducted fan',
      ENGINE_KIND_PROPELLER: 'propeller',
    },
    GearKind: {
      GEAR_KIND_UNSPECIFIED: unsaid,
      GEAR_KIND_TRICYCLE: 'nose wheel',
      GEAR_KIND_TAILWHEEL: 'tail wheel',
      GEAR_KIND_SKID: 'skid',
      GEAR_KIND_BELLY: 'none: lands on the belly',
    },
    Finish: {
      FINISH_UNSPECIFIED: unsaid,
      FINISH_POLISHED: 'polished',
      FINISH_SMOOTH: 'smooth',
      FINISH_COVERED_OPEN_STRUCTURE: 'film over open structure',
      FINISH_TAPED_FOAM: 'taped foam',
    },
    SurfaceRole: {
      SURFACE_ROLE_UNSPECIFIED: unsaid,
      SURFACE_ROLE_WING: 'wing',
      SURFACE_ROLE_TAILPLANE: 'tailplane',
      SURFACE_ROLE_CANARD: 'canard',
      SURFACE_ROLE_FIN: 'fin',
      SURFACE_ROLE_V_TAIL: 'V tail',
      SURFACE_ROLE_WINGLET: 'winglet',
      SURFACE_ROLE_SECOND_WING: 'second wing',
    },
    SectionFamily: {
      SECTION_FAMILY_UNSPECIFIED: unsaid,
      SECTION_FAMILY_FOUR_DIGIT: 'NACA, four digits',
      SECTION_FAMILY_FLAT_PLATE: 'flat plate',
      SECTION_FAMILY_CURVED_SHEET: 'curved sheet',
      SECTION_FAMILY_REFLEXED: 'reflexed',
      SECTION_FAMILY_OWN: 'own',
    },
    ControlRole: {
      CONTROL_ROLE_UNSPECIFIED: unsaid,
      CONTROL_ROLE_ELEVATOR: 'elevator',
      CONTROL_ROLE_AILERON: 'aileron',
      CONTROL_ROLE_RUDDER: 'rudder',
      CONTROL_ROLE_FLAP: 'flap',
      CONTROL_ROLE_ELEVON: 'elevon',
      CONTROL_ROLE_FLAPERON: 'flaperon',
      CONTROL_ROLE_RUDDERVATOR: 'ruddervator',
    },
    SparShape: {
      SPAR_SHAPE_UNSPECIFIED: unsaid,
      SPAR_SHAPE_TUBE: 'tube',
      SPAR_SHAPE_CAPS_AND_WEB: 'caps and web',
      SPAR_SHAPE_SOLID: 'solid',
      SPAR_SHAPE_SHEET: 'sheet',
      SPAR_SHAPE_FOAM_CORE: 'foam core with skin',
    },
    PackChemistry: {
      PACK_CHEMISTRY_UNSPECIFIED: unsaid,
      PACK_CHEMISTRY_LITHIUM_POLYMER: 'lithium polymer',
      PACK_CHEMISTRY_LITHIUM_ION: 'lithium ion',
      PACK_CHEMISTRY_LITHIUM_IRON_PHOSPHATE: 'lithium iron phosphate',
      PACK_CHEMISTRY_NICKEL_METAL_HYDRIDE: 'nickel metal hydride',
    },
    PackUse: {
      PACK_USE_UNSPECIFIED: unsaid,
      PACK_USE_RECEIVER: 'receiver and servos',
      PACK_USE_ENGINE_CONTROL: 'engine control',
      PACK_USE_PROPULSION: 'propulsion',
    },
    RegulatorKind: {
      REGULATOR_KIND_UNSPECIFIED: unsaid,
      REGULATOR_KIND_NONE: 'no regulator',
      REGULATOR_KIND_LINEAR: 'linear regulator',
      REGULATOR_KIND_SWITCHING: 'switching regulator',
    },
    RuleKind: {
      RULE_KIND_UNSPECIFIED: unsaid,
      RULE_KIND_LIMIT: 'a limit',
      RULE_KIND_CONFIRMATION: 'something to confirm',
      RULE_KIND_CLASS: 'a fact held to a figure',
    },
    RuleSense: {
      RULE_SENSE_UNSPECIFIED: unsaid,
      RULE_SENSE_LEAST: 'the least',
      RULE_SENSE_GREATEST: 'the greatest',
    },
    RuleFact: {
      RULE_FACT_UNSPECIFIED: unsaid,
      RULE_FACT_TAKEOFF_MASS: 'take-off mass',
      RULE_FACT_EMPTY_MASS: 'mass without fuel',
      RULE_FACT_STATIC_THRUST: 'static thrust of all engines',
      RULE_FACT_ENGINE_COUNT: 'number of engines',
      RULE_FACT_CIRCUIT_AIRSPEED: 'airspeed in the circuit',
      RULE_FACT_HEIGHT: 'height of the circuit',
      RULE_FACT_FAIL_SAFE_DELAY: 'delay of the fail-safe',
    },
    CircuitHand: { CIRCUIT_HAND_UNSPECIFIED: unsaid, CIRCUIT_HAND_LEFT: 'left', CIRCUIT_HAND_RIGHT: 'right' },
  },
  title: 'All boxes of the document',
  hint: 'Every value that a document may hold. What has a box above shows the same value here.',
  yes: 'yes',
  no: 'no',
  unsaid,
  row: (what: string, n: number) => `${what}, ${String(n)}`,
  add: (what: string) => `Add a row: ${what}`,
  remove: (what: string) => `Remove ${what}`,
  earlier: (what: string) => `Move ${what} up`,
  rolling: {
    title: 'Rolling tests',
    mean: (value: string, spread: string) =>
      `Rolling friction by the tests: ${value}, one standard deviation ${spread}.`,
    used: 'Launch and landing on wheels use it in place of the surface table.',
    aside: 'A rolling resistance entered directly stands before the tests.',
    each: (n: number, value: string) => `test ${String(n)}: ${value}`,
    none: 'Pull the model over the day’s surface, or let it roll out: the friction then replaces the table’s.',
    waiting: 'The tests are not complete yet.',
  },
};
