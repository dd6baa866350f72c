/** Shows the Plan pane with one of its sections unfolded, and the focus there or on a field of it. */
import type { Store } from '../../state/store/store.ts';

/** The section of the Plan pane that holds a key of the plan. */
const SECTIONS = {
  name: 'about',
  revision: 'about',
  date: 'about',
  timeZone: 'about',
  units: 'about',
  language: 'about',
  context: 'about',
  ground: 'about',
  contacts: 'about',
  courses: 'courses',
  races: 'races',
  practice: 'distances',
  supplies: 'supplies',
  prices: 'prices',
  weather: 'weather',
  crew: 'crew',
  vehicles: 'vehicles',
  clock: 'road-times',
  zones: 'zones',
} as const;
export type PlanSection = (typeof SECTIONS)[keyof typeof SECTIONS];

/** The section where a path of the plan ("/contacts/emergency") is edited; `null` where it is none of them. */
export function sectionOf(path: string): PlanSection | null {
  const key = path.split('/')[1] ?? '';
  return Object.hasOwn(SECTIONS, key) ? SECTIONS[key as keyof typeof SECTIONS] : null;
}

/** The field of a path, or the nearest to it: one inside it, else one beside it. */
function fieldOf(section: HTMLElement, path: string): HTMLElement | null {
  const fields = [...section.querySelectorAll<HTMLElement>('[data-path]')];
  const pathOf = (field: HTMLElement): string => field.dataset['path'] ?? '';
  const inside = fields.filter((field) => `${pathOf(field)}/`.startsWith(`${path}/`));
  const empty = inside.find((field) => field instanceof HTMLInputElement && field.value === '');
  return empty ?? inside[0] ?? fields.find((field) => path.startsWith(`${pathOf(field)}/`)) ?? null;
}

export function openPlanSection(store: Store, section: PlanSection, path?: string): void {
  store.pane.value = 'plan';
  requestAnimationFrame(() => {
    const found = document.getElementById(`plan-${section}`);
    if (!(found instanceof HTMLDetailsElement)) return;
    found.open = true;
    const field = path === undefined ? null : fieldOf(found, path);
    for (let one = field?.parentElement; one !== null && one !== undefined && one !== found; one = one.parentElement)
      if (one instanceof HTMLDetailsElement) one.open = true;
    (field ?? found.querySelector('summary'))?.focus();
    (field ?? found).scrollIntoView({ block: field === null ? 'start' : 'center' });
  });
}
