import { type ReportText, aheadOfUtc } from '../reportText.ts';

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} y ${items.at(-1)}`;

export const report: ReportText = {
  title: 'Revisión de seguridad de los puestos de avituallamiento y asistencia',
  documentTitle: (plan) => `Revisión de ${plan}`,
  noName: 'Plan sin nombre',
  facts: {
    raceDay: 'Día de la carrera',
    races: 'Carreras',
    road: 'Calzadas',
    stations: 'Puestos',
    contacts: 'Ese día',
    made: 'Informe hecho',
  },
  race: ({ length, starts, entrants, cutoff }) =>
    [
      length,
      starts.length === 0 ? 'salidas sin indicar' : `${starts.length === 1 ? 'salida' : 'salidas'} ${listed(starts)}`,
      ...(entrants === null ? [] : [`${entrants} inscritos`]),
      ...(cutoff === null ? [] : [`la meta cierra a las ${cutoff}`]),
    ].join(', '),
  road: (closes, reopens) =>
    `la primera cierra a las ${closes}, la última reabre a las ${reopens}; por puestos al dorso`,
  stationCount: (all, medical) =>
    `${all}; ${medical.length === 0 ? 'ningún punto médico' : `${medical.length === 1 ? 'punto médico' : 'puntos médicos'} en ${listed(medical)}`}`,
  local: (ahead) => `hora local, ${aheadOfUtc(ahead)}`,
  contacts: { emergency: 'emergencias', raceControl: 'control de carrera', radioChannel: 'radio' },
  notStated: 'sin indicar',
  madeBy: (date, program, revision) =>
    `${date}, con ${program}, ${revision === null ? 'de un plan sin revisión indicada' : `de la revisión ${revision}`}`,
  result: ({ error, warning, note, waived, cannotTell, notRun }) =>
    [
      `${many(error, 'error', 'errores')}, ${many(warning, 'aviso', 'avisos')}, ${many(note, 'nota', 'notas')}; ${many(waived, 'aceptado', 'aceptados')}`,
      ...(cannotTell > 0 ? [`${cannotTell} de ellos sin determinar`] : []),
      ...(notRun > 0 ? [many(notRun, 'comprobación no pudo hacerse', 'comprobaciones no pudieron hacerse')] : []),
    ].join('; '),
  verdict: ({ error, warning }) =>
    error > 0
      ? `No se puede firmar aún: hay que corregir ${many(error, 'error', 'errores')}, o aceptar${error === 1 ? 'lo' : 'los'} con nombre.`
      : warning > 0
        ? `Sin errores. ${many(warning, 'aviso queda', 'avisos quedan')} a su criterio.`
        : 'Sin errores ni avisos.',
  decide: {
    title: 'Qué se le pide decidir',
    closures: '¿Pueden las calzadas cerrar y reabrir a las horas de la tabla del dorso?',
    noClosures: '¿Cuándo pueden cerrar y reabrir las calzadas? El plan no lo dice.',
    findings: (count) =>
      `¿${count === 1 ? 'Puede este hallazgo quedar así' : `Pueden estos ${count} hallazgos quedar así`}, o debe cambiar el plan?`,
    more: (count) => `y ${count} más, abajo`,
    waived: (count) =>
      `¿Admite ${count === 1 ? 'el hallazgo que otros han aceptado' : `los ${count} hallazgos que otros han aceptado`}?`,
    notRun: (count) =>
      `¿${count === 1 ? 'Puede quedar abierto el punto que no pudo comprobarse' : `Pueden quedar abiertos los ${count} puntos que no pudieron comprobarse`}? Véase «Qué no pudo comprobarse».`,
  },
  foot: (mark) => `Plan ${mark} · sin validez en cuanto cambie el plan o un archivo`,
  page: 'Página',
  of: 'de',
  walkIt: 'Que una comprobación no encuentre nada no hace seguro un lugar: recórralo a pie.',
  scope: 'Trata de los puestos de agua y asistencia, no de la salida ni la meta, los cruces, los desvíos o el público.',
  stations: {
    title: 'Puestos',
    about:
      'En el orden del plan; los lados, como los ven los corredores. «Calzada cerrada» sale de las horas del plan a lo largo del recorrido, en el puesto.',
    sheets: 'Puestos con hallazgos, o que se apartan de la práctica del plan',
    sideWords: (side, computed) =>
      side === null
        ? `Lado de las mesas sin declarar; ${computed === null ? 'la posición tampoco lo dice' : `por la posición: ${computed}`}`
        : computed === null
          ? `Mesas a la ${side}, según lo declarado; la posición no lo confirma: compruébese en el lugar`
          : `Mesas a la ${side}, según lo declarado${computed === side ? '' : `; por la posición: ${computed}`}`,
    again: 'y otra vez',
    crew: (from) => `equipo desde las ${from}`,
    open: (from, until) => `abierto de ${from} a ${until}`,
    road: (closes, reopens) => `calzada cerrada de ${closes} a ${reopens}`,
    runners: (first, last, count) => `${count} corredores de ${first} a ${last}`,
    busiest: (count, at) => `${count} en el minuto de más afluencia, a las ${at}`,
    passings: (count) => `${count} pasos`,
    walked: (by, date) => `Recorrido a pie por ${by}${date === '' ? '' : `, ${date}`}`,
    notWalked: 'Sin recorrer a pie todavía',
    captain: (name) => `Responsable: ${name}`,
    points: 'Puntos',
    noFindings: 'ninguno',
    below: 'detalles abajo',
    departs: 'Se aparta de la práctica del plan',
    reason: 'Motivo dado',
    station: 'Puesto',
    at: 'Distancia en el recorrido',
    side: 'Lado',
    runnersHead: 'Corredores',
    roadHead: 'Calzada cerrada',
    found: 'Hallazgos',
    where: 'Dónde',
    when: 'Cuándo',
  },
  files: {
    title: 'Qué se ha revisado',
    about: 'Este informe trata exactamente de estos archivos.',
    void: 'Deja de valer en cuanto cambie cualquiera de ellos: revise de nuevo.',
    plan: 'El plan',
    file: 'Archivo',
    sha256: 'SHA-256',
  },
  findings: {
    title: 'Hallazgos aparte de los de los puestos',
    severity: { error: 'Error', warning: 'Aviso', note: 'Nota' },
    none: 'Ninguno.',
    cannotTell: 'sin determinar',
    built: 'montaje real',
    waivedBy: 'Aceptado por',
    measured: 'medido',
    limit: 'límite',
  },
  placed: {
    title: 'Montaje real',
    about:
      'Posiciones registradas en el terreno, comparadas con el plan. Una distancia está bien o fuera de lugar solo si su margen no deja duda.',
    verdict: { holds: 'bien', fails: 'fuera de lugar', 'cannot tell': 'sin determinar' },
    firstEnd: 'primer extremo',
    lastEnd: 'último extremo',
    downstream: (length) => `${length} adelante, en el sentido de los corredores`,
    upstream: (length) => `${length} atrás, hacia los corredores`,
    at: 'En',
    item: 'Elemento',
    verdictHead: 'Resultado',
    distance: 'Distancia',
    limits: 'Límites',
    move: 'Mover',
    builtAbout:
      'Cada puesto según la primera de sus mesas registradas. Todas las comprobaciones se hicieron de nuevo donde están los puestos; lo que añaden figura en cada puesto.',
    offCourse: 'fuera del recorrido',
    nothingNew: 'nada',
    planned: 'Previsto en',
    recorded: 'Registrado en',
    apart: 'Separación',
    changes: 'Qué cambia',
  },
  checks: {
    notRunTitle: 'Qué no pudo comprobarse',
    notRunAbout:
      'Al plan le falta lo que estas comprobaciones necesitan, o no pudieron decidir en todas partes. No están superadas.',
    allRan: 'Todas las comprobaciones que vienen al caso pudieron hacerse.',
    notChecked: 'Sin comprobar',
    notApplicable: 'No vienen al caso',
    alsoPassed: (count) => `y ${many(count, 'comprobación', 'comprobaciones')} de archivos y datos.`,
    passedTitle: (count) => `Comprobaciones superadas (${count})`,
    passedAbout: 'Práctica habitual, si no se nombra fuente. Que una comprobación no encuentre nada no es un permiso.',
    foundNothing: 'no halló nada',
    found: (count) => many(count, 'hallazgo', 'hallazgos'),
    undecided: (count) => `${count} sin determinar`,
    unclearAt: (count) => `sin determinar en ${many(count, 'lugar', 'lugares')}`,
  },
  courses: {
    title: 'Recorridos',
    about:
      'Las distancias van por la línea, sobre el elipsoide WGS 84, sin contar la pendiente, ajustadas a la longitud indicada y a las marcas. Una línea en un archivo no certifica ningún recorrido: solo lo hace una medición en la calle.',
    drawn: {
      centre: 'por el centro de la calzada',
      shortest: 'por la ruta más corta que puede tomar un corredor',
      recorded: 'un trazado registrado',
    },
    parts: 'partes de otros recorridos',
    inPlan: 'en el plan',
    noCertificate: 'no se da',
    course: 'Recorrido',
    how: 'Cómo está trazado',
    line: 'Línea',
    stated: 'Indicada',
    inUse: 'En uso',
    certificate: 'Certificado',
  },
  practice: {
    title: 'La práctica vigente',
    about:
      'Práctica habitual si no se nombra fuente. Una guía publicada (Western Province Athletics, 2019, leída) pide puestos cada 5 km como mucho, la última caja al menos 200 m tras las mesas y al menos 3 bebidas por corredor en cada uno.',
    ofPlan: (usual) => `habitual: ${usual}`,
    noReason: 'sin motivo indicado',
    differs: (rule, own, plan) => `${rule}: ${own} (el plan: ${plan})`,
    byHand: (item) => `${item}: colocado a mano`,
    fixed: 'su lugar es fijo',
    rules: {
      signAhead: 'Cartel antes de la primera mesa',
      signTolerance: 'Tolerancia de esa distancia',
      gelAhead: 'Fin de las mesas de gel antes de las de bebida',
      tableLength: 'Longitud de una mesa',
      tableGap: 'Hueco entre isotónica y agua',
      trashFrom: 'Zona de basura tras la última mesa, desde',
      trashTo: 'Zona de basura tras la última mesa, hasta',
      boxEvery: 'Una caja al menos cada',
      kerb: 'Separación de los elementos si el plan no da la anchura',
      setback: 'Retranqueo desde el borde de la calzada',
      clearWidth: 'Anchura libre para los corredores',
      snapRadius: 'Distancia máxima del punto al recorrido',
      pinR95: 'Error de posición de los puntos, radio del 95 %',
      courseR95: 'Error de posición de las líneas, radio del 95 %',
      sideConfidence: 'Un lado es seguro desde',
      maxSpacing: 'Distancia máxima sin puesto',
      minSpacing: 'Distancia mínima entre puestos',
      maxGrade: 'Pendiente máxima en las mesas',
      bendClear: 'Lejos de curvas, al menos',
      firstAfter: 'Primer puesto tras la salida, al menos',
      lastBefore: 'Último puesto antes de la meta, al menos',
      placedWithin: 'Distancia máxima entre el montaje y el plan',
    },
  },
  signatures: {
    title: 'Firmas',
    about:
      'La firma confirma que se ha leído este informe, con lo que deja abierto. No es un permiso ni cierra ninguna calle.',
    offices: [
      'Dirección del evento',
      'Revisión de seguridad',
      'Policía',
      'Bomberos',
      'Servicio médico',
      'Autoridad de la vía',
    ],
    agreed: 'Conforme',
    conditions: 'Con condiciones',
    office: 'Servicio',
    name: 'Nombre',
    signature: 'Firma',
    date: 'Fecha',
  },
};
