import { expect, test } from 'vitest'
import { EventFeed } from '../src/event-feed.ts'

/** Expected: the rule of the HTML standard for `Last-Event-ID`, applied by hand to short rings. */
test('what was missed comes in order; what is no longer known is told as such', () => {
  const feed = new EventFeed(5000)
  const start = feed.newest
  expect(feed.since(start)).toEqual([])
  for (let k = 0; k < 1500; k++) feed.tell('piece', { k })
  expect(feed.newest).toBe(start + 1500)
  expect(feed.since(start + 1498)!.map(e => e.data)).toEqual(['{"k":1498}', '{"k":1499}'])
  expect(feed.since(start + 500)).toHaveLength(1000)
  expect(feed.since(start + 499)).toBeNull()
  expect(feed.since(feed.newest)).toEqual([])
  expect(feed.since(feed.newest + 1)).toBeNull()
})

test('numbers of a server that ran before are known to be old, however many it had told', () => {
  const before = new EventFeed(Date.parse('2026-11-27T09:00:00Z'))
  for (let k = 0; k < 40; k++) before.tell('piece', {})
  const after = new EventFeed(Date.parse('2026-11-27T09:00:01Z'))
  expect(after.since(before.newest)).toBeNull()
  for (let k = 0; k < 80; k++) after.tell('piece', {})
  expect(after.since(before.newest)).toBeNull()
})

test('a device that is shut out ends, others go on', () => {
  const feed = new EventFeed(1)
  const ended: string[] = []
  feed.listen(
    () => undefined,
    'phone',
    () => ended.push('phone')
  )
  feed.listen(
    () => undefined,
    'tablet',
    () => ended.push('tablet')
  )
  feed.end('phone')
  expect(ended).toEqual(['phone'])
  feed.end()
  expect(ended.sort()).toEqual(['phone', 'phone', 'tablet'])
})

test('a device that listens ever more often keeps its newest listeners, others theirs', () => {
  const feed = new EventFeed(1)
  const heard: string[] = []
  const ended: string[] = []
  const listen = (device: string, name: string) =>
    feed.listen(
      () => heard.push(name),
      device,
      () => ended.push(name)
    )
  listen('phone', 'phone')
  for (let k = 0; k < 30; k++) listen('desk', `desk ${k}`)
  expect(ended).toEqual(['desk 0', 'desk 1', 'desk 2', 'desk 3', 'desk 4', 'desk 5'])
  feed.tell('piece', {})
  expect(heard).toHaveLength(25)
  expect(heard).toContain('phone')
  expect(heard).toContain('desk 29')
  expect(heard).not.toContain('desk 5')
})
