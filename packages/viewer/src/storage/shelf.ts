/** What the page has to keep plans with, handed down to the panels. */
import { signal, type Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Keeper } from './keeper.ts';
import type { Database } from './tables.ts';

export interface Shelf {
  readonly database: Database;
  readonly keeper: Keeper;
}

/** `null` until the browser's database is open, and where it cannot be opened. */
export type ShelfSignal = Signal<Shelf | null>;

export const createShelf = (): ShelfSignal => signal(null);

const ShelfContext = createContext<ShelfSignal>(createShelf());
export const ShelfProvider = ShelfContext.Provider;

export const useShelf = (): Shelf | null => useContext(ShelfContext).value;
