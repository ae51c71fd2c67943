import { matchPath, type Match } from './router';

/** Where the person is: follows the address bar. */
export const place: { path: string; match: Match } = $state({
  path: location.pathname,
  match: matchPath(location.pathname),
});

function arrive(): void {
  place.path = location.pathname;
  place.match = matchPath(location.pathname);
}

/** Goes to a path of the page and puts reader and keyboard at its top. */
export function go(path: string, replace = false): void {
  if (replace) history.replaceState(null, '', path);
  else history.pushState(null, '', path);
  arrive();
  scrollTo(0, 0);
  document.getElementById('page')?.focus({ preventScroll: true });
}

/** The link of the page that a plain click asks for, if any. */
function ownLink(event: MouseEvent): string | undefined {
  if (event.defaultPrevented || event.button !== 0) return undefined;
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return undefined;
  const link = (event.target as Element | null)?.closest('a');
  if (!link || link.target !== '' || link.hasAttribute('download')) return undefined;
  return link.origin === location.origin && !link.hash ? link.pathname : undefined;
}

/** Lets back, forward and every plain link move within the page. */
export function followLinks(): void {
  addEventListener('popstate', arrive);
  document.addEventListener('click', (event) => {
    const path = ownLink(event);
    if (path === undefined) return;
    event.preventDefault();
    go(path);
  });
}
