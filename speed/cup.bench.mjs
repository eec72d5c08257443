// A cup test fitted, and a label of four figures, first in a process and warm.
const { fitCup, test, label, base } = await made()

async function made() {
  const engine = '../packages/engine/dist/src'
  const [{ fitCup }, { cupHistory }, { labelFit }, { RESINS }] = await Promise.all(
    ['resin/fit/cup-fit.js', 'resin/cup.js', 'resin/label-fit.js', 'catalogue/resin.js'].map(
      file => import(`${engine}/${file}`)
    )
  )
  const base = RESINS.find(r => r.id === 'medium').model
  // Readings every three minutes of the class itself, a quarter faster; a ripple stands for noise.
  const { history } = cupHistory({
    resin: base,
    massG: 150,
    vessel: { diameterMm: 60, capacityMl: 300 },
    roomC: 22,
    rateFactor: 1.25,
    untilH: 4
  })
  const readings = Array.from({ length: 80 }, (_, i) => {
    const s = i * 180
    let k = 1
    while (k < history.timeS.length - 1 && history.timeS[k] < s) k++
    const part = (s - history.timeS[k - 1]) / (history.timeS[k] - history.timeS[k - 1])
    const c = history.innerC[k - 1] + (history.innerC[k] - history.innerC[k - 1]) * part
    return { timeMin: i * 3, tempC: c + 0.3 * Math.sin(i * 1.7) }
  })
  const test = {
    massG: 150,
    diameterMm: 60,
    roomC: 22,
    startC: null,
    readings,
    stringsMin: null,
    gelledMin: null
  }
  const figures = {
    potLife: { minutes: 80, massG: 100, tempC: 25 },
    gelTime: { minutes: 330, tempC: 25 },
    hardTime: { minutes: 24 * 60, tempC: 25 },
    greatestDepthMm: 10
  }
  return { fitCup, test, label: () => labelFit(base, figures), base }
}

function last(calls, work) {
  let ms = 0
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    work()
    ms = performance.now() - from
  }
  return { ms }
}

export const variants = [
  {
    name: 'cup first',
    about: 'a cup test of 80 readings fitted, first in its process',
    bar: 'under 1000',
    run: () => last(1, () => fitCup(test, base))
  },
  {
    name: 'cup warm',
    about: 'the same, fifth in its process',
    bar: 'under 1000',
    run: () => last(5, () => fitCup(test, base))
  },
  {
    name: 'label first',
    about: 'a label of pot life, gel time, hard time and depth, first in its process',
    run: () => last(1, label)
  }
]
