import type { YearText } from '../yearText.ts';

export const year: YearText = {
  station: 'puesto',
  name: 'nombre',
  left: {
    waterFull: 'garrafas de agua llenas',
    waterEmpty: 'garrafas de agua vacías',
    sportsDrinkFull: 'garrafas de isotónica llenas',
    sportsDrinkEmpty: 'garrafas de isotónica vacías',
    cupPacks: 'paquetes de vasos sobrantes',
    cupsLoose: 'vasos sueltos sobrantes',
    gelBoxes: 'cajas de geles sobrantes',
    gelsLoose: 'geles sueltos sobrantes',
  },
  roster: {
    role: 'tarea',
    from: 'desde',
    until: 'hasta',
    phone: 'teléfono',
    title: 'Firmas de entrada y salida',
    about:
      'Firme al llegar y al irse, para que el responsable sepa quién está. Guarde esta hoja en el puesto y entréguela tras la carrera.',
    columns: ['Nombre', 'Tarea', 'Horas', 'Entrada', 'Salida', 'Firma'],
    needs: (crew, from, until, shifts) =>
      `Equipo de ${crew} desde las ${from} hasta las ${until} aproximadamente${shifts > 1 ? `, en ${shifts} turnos` : ''}.`,
    missing: (count) => `Faltan ${count} por encontrar.`,
    ends: (time) =>
      `Nadie se va antes de que control de carrera libere el puesto (hacia las ${time}) y todo esté limpio.`,
    sum: 'Firmas de entrada en total:',
  },
  sent: 'Enviado',
  to: 'a',
  learning: {
    title: 'Lo que enseña la jornada',
    about:
      'Lo usado, según lo que sobró en los puestos, junto a lo que esperaba el plan. Las cantidades son una propuesta para la próxima carrera.',
    how: 'Cada cantidad se multiplica por todo lo usado entre todo lo esperado: un puesto con mucha gente pesa más que uno tranquilo. ± es el error típico entre puestos; el intervalo va del puesto más bajo al más alto.',
    kindsTitle: 'Usado y esperado',
    kinds: ['Qué', ' Usado', ' Esperado', ' Usado / esperado', ' Del más bajo al más alto', 'Contado en'],
    ratesTitle: 'Cantidades para la próxima carrera',
    rates: ['Quién', 'Qué', ' Por persona, este plan', ' Por persona, próxima', ' Del más bajo al más alto'],
    divisions: { run: 'Corredores', walk: 'Caminantes', wheels: 'Sillas' },
    stationsTitle: 'Cada puesto',
    stations: ['Puesto', 'Qué', ' Usado', ' Esperado', ' Usado / esperado'],
    oneStation: 'un solo puesto: sin dispersión',
    heat: (heat) => `Aprendido con tiempo ${heat}; un día más caluroso pide más.`,
    heats: { cool: 'fresco', warm: 'templado', hot: 'caluroso' },
    form: 'Sobrante tras la carrera',
    formAbout:
      'Cuente cuando haya pasado el último corredor, antes de recoger. Una garrafa empezada cuenta como media.',
  },
};
