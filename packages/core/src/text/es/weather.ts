import type { WeatherText } from '../weatherText.ts';

export const weather: WeatherText = {
  title: 'Hoja del tiempo',
  about: 'Lo que se espera, y lo que hace un puesto en cada nivel. Lleve una copia al puesto.',
  hours: ['Desde', 'Temperatura', 'Viento', 'Nivel'],
  level: 'Nivel',
  when: 'WBGT',
  doesTitle: 'Qué hace el puesto',
  short: (level, time) => `Tiempo: nivel ${level} previsto a las ${time}; vea la hoja del tiempo.`,
  shortThunder: 'Truenos: todos a cubierto enseguida.',
  levels: { white: 'blanco', green: 'verde', yellow: 'amarillo', red: 'rojo', black: 'negro' },
  measured: { wbgt: 'WBGT', humidity: 'WBGT de unos', air: 'Aire (no WBGT)' },
  under: (temperature) => `menos de ${temperature}`,
  between: (from, to) => `de ${from} a ${to}`,
  over: (temperature) => `más de ${temperature}`,
  does: {
    white: 'Ropa de repuesto y mantas, secas. Bebidas sin hielo. Atención a quien tirite o tropiece.',
    green: 'Según lo previsto.',
    yellow: 'Atención a quien se tambalee, se pare o esté confuso. Sombra y esponjas a mano. Sirva con antelación.',
    red: 'Pida a control de carrera hielo, esponjas y más bebida. Monte sombra. Diga a los corredores: aflojen, beban, caminen si se encuentran mal.',
    black:
      'La carrera puede acortarse o pararse. Siga sirviendo. Diga a los corredores que caminen y lleve a la sombra a quien se encuentre mal. Espere a control de carrera.',
  },
  decides:
    'La dirección médica decide el nivel y si se para la carrera; control de carrera se lo dirá por radio. Si algo le preocupa, llame a control de carrera y, si peligra una vida, antes al número de emergencias.',
  windTitle: (speed) => `Viento de ${speed} o más`,
  wind: [
    'Una sola capa de vasos, sin láminas de apilar.',
    'Pesos sobre vasos, láminas y cajas vacías; ate carteles y toldos.',
    'Sirva menos cada vez y más a menudo.',
  ],
  thunderTitle: 'Truenos o rayos',
  thunder: [
    'No espere aviso. Todos a un edificio o a un vehículo cerrado; también los corredores si hay sitio.',
    'Lejos de árboles, postes, carpas, mesas de metal y agua.',
    'Avise a control de carrera de que el puesto está cerrado. Siga solo cuando control de carrera lo diga.',
  ],
};
