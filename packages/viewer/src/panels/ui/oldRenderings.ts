/**
 * Lets go of what is no longer shown. Preact keeps the first rendering of what stands among `props.children`, and an old
 * rendering holds on to every later one by way of parts that the two share (preactjs/preact issue 4909): a megabyte for each
 * press of a button, in a page as large as this one.
 */
import { options, type Component, type VNode } from 'preact';

/** What Preact calls the component and the children of a rendering; the names are part of its build for its own add-ons. */
interface Rendering extends VNode {
  __c?: Component | null;
  __k?: unknown;
}

/** From now on a component's rendering lets go of its parts as soon as there is a newer one. */
export function forgetOldRenderings(): void {
  const newest = new WeakMap<Component, Rendering>();
  const before = options.diffed?.bind(options);
  options.diffed = (vnode: Rendering) => {
    before?.(vnode);
    const component = vnode.__c;
    if (component === null || component === undefined || typeof vnode.type !== 'function') return;
    const old = newest.get(component);
    if (old !== undefined && old !== vnode) old.__k = null;
    newest.set(component, vnode);
  };
}
