/** The strip's keys, for people who look for them and for screen readers, which read them with what they belong to. */
import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import { wheelUnit } from '../words.ts';

type Keys = readonly (readonly [keys: string, action: string])[];

const ringKeys = (unit: string): Keys => [
  ['← →', `moves it 1 ${unit} along the course`],
  ['Shift + ← →', `moves it 10 ${unit}`],
  ['Alt + ← →, Page Up, Page Down', `moves it 100 ${unit}`],
  ['↑ ↓', 'moves it to the left-hand or right-hand side'],
  ['S', 'swaps sides'],
  ['Enter', 'selects it'],
  ['D', 'duplicates it'],
  ['Delete', 'deletes it'],
  ['Escape', 'puts it back while it is dragged'],
];
const GROUND_KEYS: Keys = [
  ['← →, Page Up, Page Down, Home, End', 'move the pointer along the course'],
  ['+ −', 'zoom in and out'],
  ['0', 'shows the whole course'],
  ['Enter', 'shows the place on the map'],
  ['W', 'answers “Where is this?”, as does a click on the course line'],
  ['A', 'adds a station there'],
];

const CLOCK_KEYS: Keys = [
  ['← →', 'set the clock a minute back and on'],
  ['Page Up, Page Down', 'set it 15 minutes on and back'],
  ['Home, End', 'go to the beginning and the end of race day'],
  ['Space', 'plays and pauses'],
];

const Table = ({
  id,
  caption,
  keys,
}: {
  readonly id: string;
  readonly caption: string;
  readonly keys: Keys;
}): JSX.Element => (
  <table id={id}>
    <caption>{caption}</caption>
    <tbody>
      {keys.map(([key, action]) => (
        <tr key={key}>
          <th scope="row">{key}</th>
          <td>{action}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

export function StripKeys(): JSX.Element {
  const store = useStore();
  const unit = wheelUnit(store.units.value);
  const clock = useComputed(() => store.clock.value !== null).value;
  return (
    <details class="strip-keys">
      <summary>Keys</summary>
      <div>
        <Table id="strip-ring-keys" caption="On a station" keys={ringKeys(unit)} />
        <Table id="strip-ground-keys" caption="On the course" keys={GROUND_KEYS} />
        {clock ? <Table id="strip-clock-keys" caption="On the clock" keys={CLOCK_KEYS} /> : null}
      </div>
    </details>
  );
}
