let sound: AudioContext | null = null

/** Two short tones and a shake, as far as the device lets a page do either. */
export function ring(): void {
  navigator.vibrate?.([200, 100, 200])
  try {
    sound ??= new AudioContext()
    const at = sound.currentTime
    for (const [k, hertz] of [660, 880].entries()) {
      const tone = sound.createOscillator()
      const loud = sound.createGain()
      tone.frequency.value = hertz
      loud.gain.setValueAtTime(0.2, at + 0.25 * k)
      loud.gain.exponentialRampToValueAtTime(0.001, at + 0.25 * k + 0.22)
      tone.connect(loud).connect(sound.destination)
      tone.start(at + 0.25 * k)
      tone.stop(at + 0.25 * k + 0.23)
    }
  } catch {
    // A page without sound still shows it.
  }
}
