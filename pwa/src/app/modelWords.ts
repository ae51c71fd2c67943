import type { HandlingClass } from './wire';

/** Words of the form that describes a model, its launch and its day; a part of the one catalogue. */
export const modelWords = {
  sheet: {
    label: 'What was computed of the model',
    model: 'Model',
    modelLine: (surfaces: number, bodies: number) =>
      `Three views to scale; ${String(surfaces)} surfaces, ${String(bodies)} ${bodies === 1 ? 'body' : 'bodies'}.`,
    lift: 'Lift and drag',
    liftLine: (stall: string | undefined, drag: string | undefined) =>
      stall === undefined && drag === undefined
        ? 'Nothing computed yet.'
        : `Greatest lift coefficient ${stall ?? 'unknown'}, drag coefficient without lift ${drag ?? 'unknown'}.`,
    balance: 'Balance and trim',
    balanceLine: (full: string | undefined, empty: string | undefined) =>
      full === undefined && empty === undefined
        ? 'No static margin computed yet.'
        : `Static margin ${full ?? 'unknown'} of the mean chord with full tanks, ${empty ?? 'unknown'} empty.`,
    quantities: 'All quantities',
    quantitiesLine: (n: number) =>
      n === 1
        ? 'One number, with formula and source.'
        : `${String(n)} numbers, each with formula and source.`,
  },
  ballast: {
    title: 'Ballast',
    line: 'Ways to bring the balance point into its window, least mass first.',
    none: 'No ballast is needed, or no place for it is given.',
    at: (x: string) => `at ${x}`,
    notEnough: 'no mass that it holds is enough',
    margins: (full: string, empty: string) => `static margin ${full} with full tanks, ${empty} empty`,
  },
  weigh: {
    title: 'Weigh-in',
    line: 'Put the model level on its scales, tanks empty, ready to fly. Everything you type here is computed at once.',
    result: 'Mass and balance',
    typed:
      'The mass or balance point typed above stands before the scales. Let the scales decide, and those two boxes become empty; Undo brings them back.',
    decide: 'Let the scales decide',
    waiting: 'Give the reading and the place of every scale to see mass and balance.',
    prompt: 'No scale yet. Add one for each point the model stands on.',
    takeWheels: 'One scale under each wheel',
    add: (one: string) => `Add ${one}`,
    remove: 'Remove',
    up: 'Up',
    down: 'Down',
    of: (what: string, name: string) => `${what}: ${name}`,
    count: (n: number) => (n === 0 ? 'none' : String(n)),
    repeatsHint:
      'Lift the model off and put it back; note each new reading. Three or more show the real spread.',
    repeat: (n: number) => `Weighing ${String(n)}`,
    addRepeat: 'Add a weighing',
    removeRepeat: 'Remove the last one',
    lists: {
      scales: {
        title: 'Scales',
        one: 'a scale',
        name: 'scale',
        hint: 'One row a scale: under each wheel, or under the two or three points of a cradle.',
      },
      items: {
        title: 'Items',
        one: 'an item',
        name: 'item',
        hint: 'Each part with its mass and place. Their sum is compared with the scales.',
      },
      tanks: {
        title: 'Tanks',
        one: 'a tank',
        name: 'tank',
        hint: 'Fuel moves the balance point as it burns.',
      },
      ballast: {
        title: 'Places for ballast',
        one: 'a place',
        name: 'place',
        hint: 'Where weight can be fixed so that it cannot move in flight.',
      },
    },
    cells: {
      name: { label: 'Name', hint: '' },
      readingKg: { label: 'Reading', hint: 'Wait until it stands still.' },
      tareKg: { label: 'Tare', hint: 'Block or dish on the scale, weighed alone.' },
      massKg: { label: 'Mass', hint: 'Weighed alone, with its screws and leads.' },
      xMeters: { label: 'Aft of the datum', hint: 'From the datum, along the model; ahead of it negative.' },
      yMeters: { label: 'To starboard', hint: 'From the middle; port negative.' },
      zMeters: { label: 'Above the datum', hint: 'Up positive.' },
      scale: { label: 'Scale', hint: 'Its name, where several were used: what one weighs shares its error.' },
      movable: { label: 'Can be moved to shift the balance', hint: '' },
      capacityLiters: { label: 'Fuel, usable', hint: 'Fill from a measuring jug.' },
      burnOrder: { label: 'Empties as number', hint: '1 is the first.' },
      fillRatio: { label: 'Filled to', hint: '1 is full. Empty means full.' },
      maximumMassKg: { label: 'Holds at most', hint: 'Leave empty for no limit.' },
    },
  },
  handling: {
    label: 'Made for',
    hint: 'Decides the recommended window of the static margin.',
    classes: {
      HANDLING_CLASS_UNSPECIFIED: 'not said',
      HANDLING_CLASS_TRAINER: 'first turbine, forgiving',
      HANDLING_CLASS_SPORT: 'sport flying',
      HANDLING_CLASS_FAST: 'high speed, small throws',
      HANDLING_CLASS_CANARD: 'tail first',
      HANDLING_CLASS_TAILLESS: 'tailless',
    } satisfies Record<HandlingClass, string>,
    throwUp: (name: string) => `Throw of the ${name}, trailing edge up`,
    throwDown: (name: string) => `Throw of the ${name}, trailing edge down`,
    throwHint: 'At full stick; angle gauge on the hinge line.',
  },
  models: {
    title: 'My models',
    none: 'You have no model here yet.',
    noneNext: 'Start from a JSON file of its measurements. Findings appear while you type.',
    create: 'Describe a model',
    revision: (n: number) => `revision ${String(n)}`,
    change: 'Change the model',
  },
  form: {
    titleNew: 'Describe a model',
    titleChange: 'Change the model',
    titleResubmit: 'Change and send again',
    fileTitle: 'Start from a file',
    file: 'JSON file of the model, or of the whole document',
    fileHint:
      'Choose a file, or drop it anywhere on this box. Nothing is kept on the server until you submit.',
    fileNotJson: (why: string) => `This file is not JSON: ${why}`,
    fileNoDocument: 'This file holds neither a model nor a whole document.',
    fileStrange: (names: string[]) =>
      `Neither a model nor a document has a part named ${names.map((n) => `“${n}”`).join(', ')}.`,
    sectionModel: 'The model',
    sectionPlan: 'Field and launch',
    sectionDay: 'The day',
    sectionRest: 'Everything else in the document',
    restHint: 'The whole document as text. Change it here where the form has no box for a value.',
    restUse: 'Use this text',
    restBad: (why: string) => `This text is not valid JSON: ${why}`,
    name: 'Name of the model',
    field: 'Field',
    fieldNone: 'Choose a field',
    method: 'Launched from',
    strip: 'Strip',
    reversed: 'Run the strip from its far end',
    spot: 'Launch spot',
    notSaid: 'not said',
    basis: 'known how',
    noteLabel: 'Note to the officer',
    noteHint: 'What the officer should know: what you changed, what you still mean to measure.',
    wrong: (name: string) => `${name}: write a number.`,
    inUnit: (unit: string, fault: string) => `in ${unit}, ${fault}`,
    saved: (time: string) => `Kept on this device at ${time}`,
    saving: 'Keeping …',
    unsaved: 'Nothing changed yet',
    saveFailed: 'This device refused to keep the draft. Do not close the page before you submit.',
    undo: 'Undo',
    redo: 'Redo',
    discard: 'Throw the draft away',
    restored: 'Your draft from this device was restored.',
    live: 'Findings as you type',
    computing: 'Computing …',
    early: 'Values as given; what the uncertain inputs make of them follows.',
    refused: 'Not computed: see what is wrong',
    stale: 'These findings are older than what you typed.',
    computedBy: {
      device: (version: string) => `Computed on this device by core ${version}.`,
      server: (version: string) => `Computed by the club’s server, core ${version}.`,
    },
    livePrompt: 'Choose a field and give the model’s measurements to see its findings.',
    submit: 'Submit for first-flight approval',
    resubmit: 'Keep the new revision and send again',
    keep: 'Keep the new revision',
    keepOnly: 'Keep the model without asking for approval',
    needName: 'Give the model a name first.',
    needField: 'Choose a field first.',
    discardAsk: 'Throw away what you typed? The draft on this device is deleted.',
  },
  entries: {
    'model.mass.emptyMassKg': {
      label: 'Mass, tanks empty',
      hint: 'Weigh it complete, packs in, canopy on. Leave empty when you weigh it on scales below.',
    },
    'model.mass.emptyBalanceXMeters': {
      label: 'Balance point, aft of the datum',
      hint: 'Tanks empty. Hang it or use two scales; measure from the datum.',
    },
    'model.engines.0.staticThrustNewtons': {
      label: 'Static thrust, full power',
      hint: 'Pull on a spring scale, model held, five seconds at full power.',
    },
    'model.structure.wingTwistStiffnessNewtonMetersPerRadian': {
      label: 'Wing twist stiffness',
      hint: 'Root held, a bar across the tip with a weight at its end: moment over the angle it turns.',
    },
    'launchPlan.ramp.lengthMeters': { label: 'Ramp length', hint: 'What the model travels on the rails.' },
    'launchPlan.ramp.angleDegrees': { label: 'Ramp slope', hint: 'Against the horizontal.' },
    'launchPlan.ramp.endHeightMeters': {
      label: 'Ramp end height',
      hint: 'Above the ground at the ramp’s foot.',
    },
    'launchPlan.bungee.stiffnessNewtonsPerMeter': {
      label: 'Bungee stiffness',
      hint: 'Pull it one metre further and read the scale’s change.',
    },
    'launchPlan.bungee.stretchMeters': { label: 'Bungee stretch', hint: 'From slack to release.' },
    'launchPlan.handSpeedMetersPerSecond': {
      label: 'Throw speed',
      hint: 'Of a person’s throw, from a film if you can.',
    },
    'launchPlan.ramp.dollyMassKg': { label: 'Dolly mass', hint: 'Weighed alone.' },
    'launchPlan.ramp.frictionRatio': {
      label: 'Friction of the dolly',
      hint: 'Pull it level with the model on: force over weight.',
    },
    'launchPlan.ramp.cradleDegrees': {
      label: 'Model on the dolly, nose up',
      hint: 'Angle of the model to the rails.',
    },
    'launchPlan.ramp.tailXMeters': {
      label: 'Place of the tail’s lowest point',
      hint: 'Skid, fin or pipe behind the cradle, aft of the datum.',
    },
    'launchPlan.ramp.tailHeightMeters': {
      label: 'Height of that point over the rails',
      hint: 'With the model in the cradle.',
    },
    'launchPlan.ramp.dollyDragAreaSquareMeters': {
      label: 'Drag area of the dolly',
      hint: 'Its frontal area, about. Empty: it falls without drag.',
    },
    'launchPlan.bungee.efficiencyRatio': {
      label: 'Share of the work that comes back',
      hint: 'From a pull test out and back.',
    },
    'launchPlan.bungee.cordMassKg': { label: 'Mass of the moving cord', hint: 'Weighed alone.' },
    'launchPlan.bungee.frictionRatio': {
      label: 'Friction on the ground',
      hint: 'Of skid or dolly: pulling force over weight.',
    },
    'launchPlan.bungee.hookReleaseNewtons': {
      label: 'Pull at which the hook lets go',
      hint: 'By a scale at the hook. Empty: when the cord is slack.',
    },
    'launchPlan.handHeightMeters': { label: 'Height of the hand', hint: 'Above the ground as it lets go.' },
    'launchPlan.circuit.heightMeters': { label: 'Circuit height', hint: 'Above the ground.' },
    'day.temperatureCelsius': { label: 'Temperature', hint: 'In the shade.' },
    'day.qnhPascals': { label: 'Pressure at sea level (QNH)', hint: 'From a weather report.' },
    'day.windSpeedMetersPerSecond': { label: 'Wind, mean', hint: 'At 10 m, ten minutes.' },
    'day.gustSpeedMetersPerSecond': { label: 'Wind, highest gust', hint: 'Leave empty if unknown.' },
    'day.windDirectionDegrees': { label: 'Wind from', hint: 'Degrees true.' },
    'day.relativeHumidityRatio': { label: 'Humidity', hint: '1 is saturated.' },
    'day.dewPointCelsius': { label: 'Dew point', hint: 'From a weather report.' },
    'day.visibilityMeters': { label: 'Visibility', hint: 'The least in any direction.' },
    'day.cloudBaseMeters': { label: 'Cloud base', hint: 'Above the ground; leave empty without cloud.' },
    'model.radio.failSafeDelaySeconds': {
      label: 'Fail-safe acts after',
      hint: 'Transmitter off, engine stopped: time it with a watch.',
    },
  } satisfies Record<string, { label: string; hint: string }>,
  day: {
    surface: 'Surface',
    time: 'Date and time of the flight',
    timeHint: 'As planned; it is checked again on the day.',
    clock: (offset: string) =>
      offset === ''
        ? 'By the clock at the field.'
        : `By the clock at the field, ${offset === 'Z' ? 'UTC' : `UTC${offset}`}.`,
  },
};
