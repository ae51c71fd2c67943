import { approvalWords } from './approvalWords';
import { fieldWords } from './fieldWords';
import { findingWords } from './findingWords';
import { flightWords } from './flightWords';
import { incidentWords } from './incidentWords';
import { modelWords } from './modelWords';
import type { ApprovalState, LaunchMethod, Role } from './wire';

/**
 * Every word the page says; a second language is a second file of this shape. Those of all boxes of the document (documentWords) and of rule packs
 * (ruleWords) are fetched with the pages that say them.
 */
export const words = {
  fields: fieldWords,
  ...flightWords,
  ...modelWords,
  ...findingWords,
  ...approvalWords,
  ...incidentWords,
  app: {
    name: 'Pitgate',
    line: 'First-flight approvals',
    skip: 'Skip to the page',
    missing: 'There is no page at this address.',
    home: 'Go to your own page',
    loading: 'Fetching …',
    notFetched: 'This could not be fetched, so nothing is shown here. What is on the server is unchanged.',
    again: 'Try again',
    forbidden: 'This part belongs to another role in the club.',
    update: 'A newer version of this page is ready. What you typed is kept.',
    updateNow: 'Load the newer version of the page',
    offline:
      'No connection to the club’s server. Drafts on this device are kept; records need the connection.',
    units: 'Units',
    unitKinds: { speed: 'Speed', length: 'Length', mass: 'Mass', force: 'Force' },
    light: 'Light ground, for sunlight',
    print: 'Print',
    save: 'Save the document as a file',
    loadMore: 'Show more',
  },
  titles: {
    home: 'Pitgate',
    waiting: 'Waiting for me',
    models: 'My models',
    newModel: 'Describe a model',
    changeModel: 'Change the model',
    compareModel: 'Compare',
    approvals: 'Approvals',
    approval: 'Approval',
    changeApproval: 'Change and send again',
    incidents: 'Incidents',
    newIncident: 'Report an incident',
    incident: 'Incident',
    fields: 'Fields',
    field: 'Field',
    newField: 'Describe a field',
    changeField: 'Change the field',
    rules: 'Rules',
    rulePack: 'Rule pack',
    newRules: 'Draft a rule pack',
    changeRules: 'Edit the draft',
    strictest: 'Strictest of all packs',
    missing: 'No such page',
  },
  nav: {
    label: 'Parts of the page',
    waiting: 'Waiting for me',
    models: 'My models',
    approvals: 'Approvals',
    incidents: 'Incidents',
    fields: 'Fields',
    rules: 'Rules',
  },
  problem: {
    offline: 'No answer from the club’s server. Check the connection and try again.',
    empty: 'The server answered without saying anything. Try again.',
    reference: (id: string) => `If you ask for help, quote request ${id}.`,
    close: 'Close',
    status: (code: number) =>
      ({
        401: 'You are not signed in. Sign in and try again.',
        403: 'Your role in the club does not allow this.',
        404: 'This record does not exist, or belongs to another club.',
        409: 'Somebody changed this meanwhile.',
        413: 'This is too large to send.',
        429: 'Too many tries. Wait a minute and try again.',
      })[code] ?? `The server could not do this (${String(code)}). Try again.`,
  },
  signIn: {
    title: 'Sign in',
    demoTitle: 'Who are you today?',
    demoLine: 'This is a demonstration with invented people. Tap a name to sign in as that person.',
    club: 'Club id',
    clubHint: 'The short name your club gave you, e.g. “larkmoor”.',
    email: 'E-mail address',
    password: 'Password',
    submit: 'Sign in',
    busy: 'Signing in …',
    out: 'Sign out',
  },
  roles: {
    ROLE_UNSPECIFIED: '',
    ROLE_MEMBER: 'member',
    ROLE_SAFETY_OFFICER: 'safety officer',
    ROLE_COMMITTEE: 'committee',
    ROLE_FIELD_KEEPER: 'field keeper',
    ROLE_ADMINISTRATOR: 'administrator',
  } satisfies Record<Role, string>,
  state: {
    APPROVAL_STATE_UNSPECIFIED: 'unknown state',
    APPROVAL_STATE_DRAFT: 'draft',
    APPROVAL_STATE_SUBMITTED: 'submitted',
    APPROVAL_STATE_DESK_REVIEW: 'desk review',
    APPROVAL_STATE_RETURNED: 'returned to the owner',
    APPROVAL_STATE_BENCH: 'bench inspection',
    APPROVAL_STATE_READY: 'ready for the field',
    APPROVAL_STATE_SIGNED: 'signed',
    APPROVAL_STATE_FLOWN: 'flown',
    APPROVAL_STATE_REFUSED: 'refused',
    APPROVAL_STATE_WITHDRAWN: 'withdrawn',
    APPROVAL_STATE_LAPSED: 'lapsed',
    APPROVAL_STATE_HELD: 'held',
  } satisfies Record<ApprovalState, string>,
  launch: {
    LAUNCH_METHOD_UNSPECIFIED: 'not said',
    LAUNCH_METHOD_WHEELS: 'wheels from a strip',
    LAUNCH_METHOD_RAMP: 'ramp and dolly',
    LAUNCH_METHOD_BUNGEE: 'bungee',
    LAUNCH_METHOD_HAND: 'hand',
    LAUNCH_METHOD_CATAPULT: 'catapult',
  } satisfies Record<LaunchMethod, string>,
  surface: {
    SURFACE_STATE_UNSPECIFIED: 'not said',
    SURFACE_STATE_DRY: 'dry',
    SURFACE_STATE_WET: 'wet',
    SURFACE_STATE_SOFT: 'soft',
    SURFACE_STATE_FROZEN: 'frozen',
    SURFACE_STATE_SNOW: 'snow',
  },
};

/** A rule-bound key of the form's boxes. */
export type EntryPath = keyof typeof words.entries;
