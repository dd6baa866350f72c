/**
 * Which elements are GPX ones (Namespaces in XML 1.0, 3rd ed.). The namespace of the root element counts as that
 * of GPX, whatever it is, so do both GPX namespaces and none; an element of any other is foreign.
 * A declaration costs the same however many are in force: what each prefix stands for is kept, not looked for.
 */

export interface Namespaces {
  /** An `xmlns` or `xmlns:prefix` attribute of the element at this depth; gives how many are in force with it. */
  readonly declare: (attribute: string, uri: string, depth: number) => number;
  /** Forgets what the element at this depth declared. */
  readonly leave: (depth: number) => void;
  /** To be called once, with the root element's name as written. */
  readonly setRoot: (name: string) => void;
  /** The name without the prefix of GPX; for a foreign element `null`, or its name with the prefix. */
  readonly gpxName: (name: string) => string | null;
}

const GPX = /^https?:\/\/www\.topografix\.com\/GPX\/1\/[01]\/?$/i;

interface Declared {
  readonly prefix: string;
  readonly depth: number;
  /** What the prefix stood for before. */
  readonly before: string | undefined;
}

export function createNamespaces(): Namespaces {
  const declared: Declared[] = [];
  const uris = new Map<string, string>();
  let root = '';
  let bare = true;
  // Prefixes in force that stand for GPX: with none, a name with a prefix is never a GPX one.
  let prefixes = 0;
  let rootUnknown = false;
  // Depth of the last element that declared one, so that closing all the others costs one comparison.
  let deepest = 0;

  const uriOf = (prefix: string): string =>
    // An undeclared prefix is a namespace of its own kind; the space keeps it apart from any URI.
    uris.get(prefix) ?? (prefix === '' ? '' : ` ${prefix}`);
  const isGpxUri = (uri: string): boolean => uri === '' || uri === root || GPX.test(uri);
  const counts = (prefix: string): number => (prefix !== '' && uris.has(prefix) && isGpxUri(uris.get(prefix)!) ? 1 : 0);

  const bind = (prefix: string, uri: string | undefined): void => {
    prefixes -= counts(prefix);
    if (uri === undefined) uris.delete(prefix);
    else uris.set(prefix, uri);
    prefixes += counts(prefix);
    if (prefix === '') bare = isGpxUri(uriOf(''));
  };

  return {
    declare: (attribute, uri, depth) => {
      const prefix = attribute.slice(6);
      declared.push({ prefix, depth, before: uris.get(prefix) });
      deepest = depth;
      bind(prefix, uri.trim());
      return declared.length;
    },
    leave: (depth) => {
      if (depth !== deepest) return;
      for (let last = declared.at(-1); last?.depth === depth; last = declared.at(-1)) {
        bind(last.prefix, last.before);
        declared.pop();
      }
      deepest = declared.at(-1)?.depth ?? 0;
    },
    setRoot: (name) => {
      root = uriOf(name.includes(':') ? name.slice(0, name.indexOf(':')) : '');
      rootUnknown = root.startsWith(' ');
      bare = isGpxUri(uriOf(''));
      prefixes = [...uris.keys()].reduce((sum, prefix) => sum + counts(prefix), 0);
    },
    gpxName: (name) => {
      if (bare && prefixes === 0 && !rootUnknown) return name;
      const colon = name.indexOf(':');
      if (colon === -1) return bare ? name : null;
      return isGpxUri(uriOf(name.slice(0, colon))) ? name.slice(colon + 1) : null;
    },
  };
}
