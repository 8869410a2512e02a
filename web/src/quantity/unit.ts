const signs: Record<string, string> = { degC: '°C', degF: '°F', deg: '°', um: 'µm', uS: 'µS', '-': '', 'calendar year': '' }

/** A unit's key as it is written on paper: m3/s is m³/s, t.m/cm is t·m/cm, a pure number has none. */
export function unitText(key = ''): string {
  return key
    .split(/([./])/)
    .map((part) => {
      if (part === '.') return '·'
      const [, name = part, power = ''] = /^([A-Za-zµ]+)(-?[1-4])?$/.exec(part) ?? []
      return (signs[name] ?? name) + raise(power)
    })
    .join('')
}

function raise(power: string): string {
  return power.replace('-', '⁻').replace(/[1-4]/, (d) => ({ 1: '¹', 2: '²', 3: '³', 4: '⁴' })[d]!)
}
