import { useEffect, useRef } from 'preact/hooks'
import type { Point } from '../../../engine/src/draw/perspective.ts'
import type { Picture } from './picture.ts'

/** Side of the loupe and how many times it enlarges a px of the photo, px of the screen. */
const SIDE_PX = 132
const TIMES = 6

/** What lies about a place of the photo, px by px, its middle crossed. Stands away from where the hand is. */
export function Loupe({
  picture,
  at,
  left
}: {
  readonly picture: Picture
  readonly at: Point
  readonly left: boolean
}) {
  const host = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const canvas = host.current
    const pen = canvas?.getContext('2d') ?? null
    if (canvas === null || pen === null) return
    const fine = devicePixelRatio || 1
    canvas.width = SIDE_PX * fine
    canvas.height = SIDE_PX * fine
    pen.setTransform(fine, 0, 0, fine, 0, 0)
    pen.imageSmoothingEnabled = false
    pen.clearRect(0, 0, SIDE_PX, SIDE_PX)
    const [u, v] = at
    const part = SIDE_PX / TIMES
    pen.drawImage(picture.bitmap, u - part / 2, v - part / 2, part, part, 0, 0, SIDE_PX, SIDE_PX)
    // Light under dark, so that the cross is seen on any wood; open in the middle, where the mark is.
    for (const [colour, width] of [
      ['rgb(255 255 255 / 0.9)', 3],
      ['rgb(30 28 25)', 1]
    ] as const) {
      pen.strokeStyle = colour
      pen.lineWidth = width
      pen.beginPath()
      const m = SIDE_PX / 2
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1]
      ] as const) {
        pen.moveTo(m + dx * 7, m + dy * 7)
        pen.lineTo(m + dx * 34, m + dy * 34)
      }
      pen.stroke()
    }
    pen.fillStyle = 'rgb(30 28 25)'
    pen.fillRect(SIDE_PX / 2 - 0.5, SIDE_PX / 2 - 0.5, 1, 1)
  }, [picture, at[0], at[1]])
  return <canvas ref={host} class={`loupe${left ? ' left' : ''}`} />
}
