/** Starts the page: one store, the plan opened last, and the width that decides between one column and three. */
import './policy.ts';
import { render } from 'preact';
import { App } from './panels/page/App.tsx';
import { workOffline } from './offline/register.ts';
import { rememberedBackground } from './state/view/background.ts';
import { rememberedGrouping } from './state/view/grouping.ts';
import { createStore, StoreProvider, type Store } from './state/store/store.ts';
import { startShelf } from './storage/kept.ts';
import { createShelf, ShelfProvider } from './storage/shelf.ts';
import { forgetOldRenderings } from './panels/ui/oldRenderings.ts';
import { isPartMissing, PART_MISSING } from './trouble.ts';
import { followPlan } from './state/edits/variants.ts';
import './styles/palette.css';
import './styles/base.css';
import './styles/page.css';
import './styles/panels.css';
import './styles/sheet.css';
import './styles/review.css';
import './styles/fields.css';
import './styles/station.css';
import './styles/raceday.css';
import './styles/strip.css';
import './styles/clock.css';
import './styles/map.css';
import './styles/place.css';
import './styles/background.css';
import './styles/plan.css';
import './styles/files.css';
import './styles/papers.css';
import './styles/road.css';
import './styles/variants.css';
import './styles/start.css';

function watchWidth(store: Store): void {
  const query = matchMedia('(max-width: 899px)');
  const read = (): void => {
    store.narrow.value = query.matches;
  };
  query.addEventListener('change', read);
  read();
}

const root = document.getElementById('app');
if (root === null) throw new Error('index.html has no element with the id "app"');
const store = createStore();
const shelf = createShelf();
store.background.value = rememberedBackground(() => localStorage);
store.grouping.value = rememberedGrouping(() => localStorage);
forgetOldRenderings();
watchWidth(store);
followPlan(store);
// The page has started: the word that it is starting goes.
root.replaceChildren();
render(
  <StoreProvider value={store}>
    <ShelfProvider value={shelf}>
      <App />
    </ShelfProvider>
  </StoreProvider>,
  root,
);
window.addEventListener('unhandledrejection', ({ reason }) => {
  if (isPartMissing(reason)) store.notice.value = { text: `That did not work: ${PART_MISSING}.` };
});
void startShelf(store, shelf);
// Its files are fetched when the page has what it needs itself.
if (import.meta.env.PROD) window.addEventListener('load', () => void workOffline(store));
