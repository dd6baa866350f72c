import type { SharedText } from '../listsText.ts';

export const shared: SharedText = {
  title: 'El plan completo',
  arrivals: 'Llegadas',
  open: 'Atiende',
  found: 'Lo que halló la revisión',
  none: 'No se hallaron problemas.',
  what: 'Gravedad',
  finding: 'Hallazgo',
  waived: 'aceptado',
  severity: { error: 'Error', warning: 'Aviso', note: 'Nota' },
};
