/**
 * Which elements are GPX ones (Namespaces in XML 1.0, 3rd ed.). The namespace of the root element counts as that
 * of GPX, whatever it is, so do both GPX namespaces and none; an element of any other is foreign.
 */

export interface Namespaces {
  /** An `xmlns` or `xmlns:prefix` attribute of the element at this depth. */
  readonly declare: (attribute: string, uri: string, depth: number) => void;
  /** Forgets what the element at this depth declared. */
  readonly leave: (depth: number) => void;
  /** To be called once, with the root element's name as written. */
  readonly setRoot: (name: string) => void;
  /** The name without the prefix of GPX; for a foreign element `null`, or its name with the prefix. */
  readonly gpxName: (name: string) => string | null;
}

const GPX = /^https?:\/\/www\.topografix\.com\/GPX\/1\/[01]\/?$/i;

export function createNamespaces(): Namespaces {
  const declared: { readonly prefix: string; readonly uri: string; readonly depth: number }[] = [];
  let root = '';
  let bare = true;
  // No prefix in scope stands for GPX, so that a name with a prefix is never a GPX one.
  let noPrefix = true;
  // Depth of the last element that declared one, so that closing all the others costs one comparison.
  let deepest = 0;

  const uriOf = (prefix: string): string =>
    // An undeclared prefix is a namespace of its own kind; the space keeps it apart from any URI.
    declared.findLast((entry) => entry.prefix === prefix)?.uri ?? (prefix === '' ? '' : ` ${prefix}`);
  const isGpx = (prefix: string): boolean => {
    const uri = uriOf(prefix);
    return uri === '' || uri === root || GPX.test(uri);
  };

  const settle = (): void => {
    bare = isGpx('');
    noPrefix = !root.startsWith(' ') && declared.every(({ prefix }) => prefix === '' || !isGpx(prefix));
  };

  return {
    declare: (attribute, uri, depth) => {
      declared.push({ prefix: attribute.slice(6), uri: uri.trim(), depth });
      deepest = depth;
      settle();
    },
    leave: (depth) => {
      if (depth !== deepest) return;
      while (declared.at(-1)?.depth === depth) declared.pop();
      deepest = declared.at(-1)?.depth ?? 0;
      settle();
    },
    setRoot: (name) => {
      root = uriOf(name.includes(':') ? name.slice(0, name.indexOf(':')) : '');
      settle();
    },
    gpxName: (name) => {
      if (bare && noPrefix) return name;
      const colon = name.indexOf(':');
      if (colon === -1) return bare ? name : null;
      return isGpx(name.slice(0, colon)) ? name.slice(colon + 1) : null;
    },
  };
}
