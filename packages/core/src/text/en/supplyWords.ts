import type { SupplyWords } from '../supplyWords.ts';

export const supplyWords: SupplyWords = {
  kinds: {
    waterJug: ['jug of water', 'jugs of water'],
    sportsDrinkJug: ['jug of sports drink', 'jugs of sports drink'],
    cups: ['pack of cups', 'packs of cups'],
    gels: ['box of gels', 'boxes of gels'],
    gloves: ['box of gloves', 'boxes of gloves'],
    bags: ['roll of trash bags', 'rolls of trash bags'],
    towels: ['pack of towels', 'towels'],
    stackingSheets: ['pack of stacking sheets', 'stacking sheets'],
    table: ['table', 'tables'],
    box: ['trash box', 'trash boxes'],
    sign: ['sign', 'signs'],
    instructions: ['sheet of instructions', 'instructions'],
    trashBags: ['bag of trash', 'bags of trash'],
  },
  signOf: (wording) => `sign “${wording}”`,
  emptyOne: (what) => `empty ${what}`,
  emptyMore: (what) => `empty ${what}`,
};
