import type { ReportText } from '../reportText.ts';

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
    `cerradas al tráfico desde las ${closes}; todas abiertas a las ${reopens} (por puestos al dorso)`,
  stationCount: (all, medical) => `${all}, ${medical === 0 ? 'ninguno' : medical} con punto médico`,
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
    closures: 'Si las calzadas pueden cerrar y reabrir a las horas de cada puesto.',
    noClosures: 'Cuándo cierran y reabren las calzadas: el plan no lo dice.',
    findings: (count) =>
      `Si ${count === 1 ? 'el hallazgo abierto puede quedar' : `los ${count} hallazgos abiertos pueden quedar`} así.`,
    waived: (count) =>
      `Si admite ${count === 1 ? 'el hallazgo aceptado' : `los ${count} hallazgos aceptados`} por otros.`,
    notRun: (count) =>
      `Qué dejan abierto ${count === 1 ? 'la comprobación que no pudo hacerse' : `las ${count} comprobaciones que no pudieron hacerse`}.`,
    nothing: 'No queda abierto nada salvo su propia vista del lugar.',
  },
  foot: (mark) => `Plan ${mark} · sin validez en cuanto cambie el plan o un archivo`,
  page: 'Página',
  of: 'de',
  walkIt: 'Que una comprobación no encuentre nada no hace seguro un lugar: recórralo a pie.',
  stations: {
    title: 'Puestos',
    about:
      'En el orden del plan. Los lados, como los ven los corredores. Las posiciones son latitud y longitud (WGS 84).',
    sheets: 'Puestos en detalle',
    of: (number, all) => `Puesto ${number} de ${all}`,
    sideWords: (declared, computed, sure) =>
      declared === null
        ? `Lado sin declarar; por la posición: ${computed}, seguro al ${sure}`
        : `Mesas a la ${declared}, declarado; por la posición: ${computed}, seguro al ${sure}`,
    open: (from, until) => `Abierto de ${from} a ${until}`,
    road: (closes, reopens) => `Calzada cerrada de ${closes} a ${reopens}`,
    runners: (first, last, count) => `Corredores de ${first} a ${last}, ${count} en el minuto de más afluencia`,
    walked: (by, date) => `Recorrido a pie por ${by}${date === '' ? '' : `, ${date}`}`,
    notWalked: 'Nadie lo ha recorrido a pie todavía',
    captain: (name) => `Responsable: ${name}`,
    findings: (count) => `${count} aquí`,
    noFindings: 'ninguno',
    departs: 'Se aparta de la práctica del plan',
    station: 'Puesto',
    street: 'Calle',
    position: 'Posición',
    at: 'Distancia en el recorrido',
    side: 'Lado',
    runnersHead: 'Corredores',
    roadHead: 'Calzada cerrada',
    found: 'Hallazgos',
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
    title: 'Hallazgos sobre el plan en conjunto',
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
    notRunAbout: 'Estas comprobaciones no pudieron hacerse, o no pudieron decidir en todas partes. No están superadas.',
    allRan: 'Todas las comprobaciones pudieron hacerse.',
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
      'Práctica habitual, salvo la distancia entre puestos (guía de IMMDA, citada de segunda mano). Manda el plan.',
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
      placedWithin: 'Distancia máxima entre el montaje y el plan',
    },
  },
  signatures: {
    title: 'Visto y conforme',
    about:
      'Al firmar, cada uno confirma que ha visto este informe, sobre los archivos nombrados al final, y lo que deja abierto.',
    offices: ['Dirección del evento', 'Revisión', 'Autoridad (policía, bomberos, sanidad, vía)'],
    office: 'Servicio',
    name: 'Nombre',
    signature: 'Firma',
    date: 'Fecha',
  },
};
