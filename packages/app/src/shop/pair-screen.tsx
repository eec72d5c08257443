import { useEffect, useState } from 'preact/hooks'
import { ApiProblem, api } from '../net/api.ts'
import { w } from '../text/words.ts'

/** What a device that is not paired sees: three words to type, or a code that was pointed at. */
export function PairScreen() {
  const [words, setWords] = useState('')
  const [says, setSays] = useState('')
  const pair = async (by: { token: string } | { words: string }) => {
    try {
      await api('POST', '/api/pair', { ...by, name: deviceName() })
      location.replace('/')
    } catch (e) {
      setSays(e instanceof ApiProblem ? e.message : w.state.unreachable)
    }
  }
  useEffect(() => {
    const token = location.hash.slice(1)
    if (token === '') return
    // The secret does not stay in the address.
    history.replaceState(null, '', '/pair')
    void pair({ token })
  }, [])
  return (
    <main class="shop" id="main">
      <section class="paper intro">
        <h2 class="big">{w.state.unpaired}</h2>
        <p class="f">{w.devices.how}</p>
        <form
          onSubmit={e => {
            e.preventDefault()
            void pair({ words })
          }}
        >
          <div class="asks">
            <label>
              <span>{w.devices.words}</span>
              <input
                type="text"
                class="words"
                autocapitalize="none"
                autocomplete="off"
                value={words}
                onInput={e => setWords(e.currentTarget.value)}
              />
            </label>
          </div>
          <p class="kinds">
            <button type="submit" class="btn main" disabled={words.trim() === ''}>
              {w.devices.pairThis}
            </button>
          </p>
          <p class="says-bad" role="alert">
            {says}
          </p>
        </form>
      </section>
    </main>
  )
}

function deviceName(): string {
  const agent = navigator.userAgent
  const what = /iPhone|Android.*Mobile/.test(agent)
    ? w.devices.phone
    : /iPad|Android/.test(agent)
      ? w.devices.tablet
      : w.devices.computer
  return `${what}, ${new Date().toLocaleDateString('en-GB')}`
}
