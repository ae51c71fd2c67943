/** Which screen a path asks for; nothing here touches the browser. */

export type ScreenName =
  | 'home'
  | 'waiting'
  | 'models'
  | 'newModel'
  | 'changeModel'
  | 'compareModel'
  | 'approvals'
  | 'approval'
  | 'changeApproval'
  | 'incidents'
  | 'newIncident'
  | 'incident'
  | 'fields'
  | 'newField'
  | 'field'
  | 'changeField'
  | 'rules'
  | 'newRules'
  | 'strictest'
  | 'rulePack'
  | 'changeRules'
  | 'missing';

export type Match = { screen: ScreenName; params: Record<string, string> };

const routes: [pattern: string, screen: ScreenName][] = [
  ['/', 'home'],
  ['/waiting', 'waiting'],
  ['/models', 'models'],
  ['/models/new', 'newModel'],
  ['/models/:model', 'changeModel'],
  ['/models/:model/compare', 'compareModel'],
  ['/approvals', 'approvals'],
  ['/approvals/:approval', 'approval'],
  ['/approvals/:approval/change', 'changeApproval'],
  ['/incidents', 'incidents'],
  ['/incidents/new', 'newIncident'],
  ['/incidents/:incident', 'incident'],
  ['/fields', 'fields'],
  ['/fields/new', 'newField'],
  ['/fields/:field', 'field'],
  ['/fields/:field/change', 'changeField'],
  ['/rules', 'rules'],
  ['/rules/new', 'newRules'],
  ['/rules/strictest', 'strictest'],
  ['/rules/:pack', 'rulePack'],
  ['/rules/:pack/change', 'changeRules'],
];

/** Parameters when the pattern fits the path, else undefined. */
function fit(pattern: string, path: string): Record<string, string> | undefined {
  const wanted = pattern.split('/');
  const given = path.split('/');
  if (wanted.length !== given.length) return undefined;
  const params: Record<string, string> = {};
  for (const [i, part] of wanted.entries()) {
    const piece = given[i] ?? '';
    if (part.startsWith(':') && piece !== '') params[part.slice(1)] = decodeURIComponent(piece);
    else if (part !== piece) return undefined;
  }
  return params;
}

/** First route that fits; a path no route knows is the screen 'missing'. */
export function matchPath(path: string): Match {
  const clean = path.length > 1 ? path.replace(/\/+$/, '') : path;
  for (const [pattern, screen] of routes) {
    const params = fit(pattern, clean);
    if (params) return { screen, params };
  }
  return { screen: 'missing', params: {} };
}
