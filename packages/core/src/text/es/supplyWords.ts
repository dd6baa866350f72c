import type { SupplyWords } from '../supplyWords.ts';

export const supplyWords: SupplyWords = {
  kinds: {
    waterJug: ['garrafa de agua', 'garrafas de agua'],
    sportsDrinkJug: ['garrafa de isotónica', 'garrafas de isotónica'],
    cups: ['paquete de vasos', 'paquetes de vasos'],
    gels: ['caja de geles', 'cajas de geles'],
    gloves: ['caja de guantes', 'cajas de guantes'],
    bags: ['rollo de bolsas de basura', 'rollos de bolsas de basura'],
    towels: ['paquete de toallas', 'toallas'],
    stackingSheets: ['paquete de láminas para apilar', 'láminas para apilar'],
    table: ['mesa', 'mesas'],
    box: ['caja de basura', 'cajas de basura'],
    sign: ['cartel', 'carteles'],
    instructions: ['hoja de instrucciones', 'instrucciones'],
    trashBags: ['bolsa de basura', 'bolsas de basura'],
  },
  signOf: (wording) => `cartel «${wording}»`,
  emptyOne: (what) => `${what} (vacía)`,
  emptyMore: (what) => `${what} (vacías)`,
};
