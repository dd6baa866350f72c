import type { WeatherText } from '../weatherText.ts';

export const weather: WeatherText = {
  title: 'Weather sheet',
  about: 'What is expected, and what a station does at each level. Take a copy to the station.',
  hours: ['From', 'Temperature', 'Wind', 'Level'],
  level: 'Level',
  when: 'WBGT',
  doesTitle: 'What the station does',
  short: (level, time) => `Weather: level ${level} expected at ${time}; see the weather sheet.`,
  shortThunder: 'Thunder: everybody inside at once.',
  levels: { white: 'white', green: 'green', yellow: 'yellow', red: 'red', black: 'black' },
  measured: { wbgt: 'WBGT', humidity: 'WBGT of about', air: 'Air (not WBGT)' },
  under: (temperature) => `under ${temperature}`,
  between: (from, to) => `${from} to ${to}`,
  over: (temperature) => `over ${temperature}`,
  does: {
    white: 'Keep spare clothes and blankets dry. No ice in drinks. Look out for runners who shiver or stumble.',
    green: 'As planned.',
    yellow:
      'Look out for runners who sway, stop or are confused. Have shade and sponges ready. Keep ahead with pouring.',
    red: 'Call race control for ice, sponges and more drinks. Put up shade. Tell runners: slow down, drink, walk if you feel unwell.',
    black:
      'The race may be shortened or stopped. Keep serving. Tell runners to walk, and bring those who are unwell into shade. Wait for race control.',
  },
  decides:
    'The medical director decides on the level and on stopping the race; race control tells you by radio. A captain who is worried calls race control, and in danger of life the emergency number first.',
  windTitle: (speed) => `Wind of ${speed} or more`,
  wind: [
    'One layer of cups only, and no stacking sheets.',
    'Weights on cups, sheets and empty boxes; tie down signs and shade.',
    'Pour fewer at a time and pour more often.',
  ],
  thunderTitle: 'Thunder or lightning',
  thunder: [
    'Do not wait for a call. Everybody into a building or a closed vehicle, runners too where there is room.',
    'Away from trees, poles, tents, metal tables and water.',
    'Tell race control that the station is closed. Go on only when race control says so.',
  ],
};
