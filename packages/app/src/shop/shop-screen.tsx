import { useEffect } from 'preact/hooks'
import { FieldTree } from '../card/field-tree.tsx'
import { AsideRows } from '../look/aside-rows.tsx'
import { fields, readFields } from '../state/fields.ts'
import {
  dropShopAside,
  editShop,
  layShopAside,
  readShop,
  shop,
  shopAsides,
  shopBefore,
  shopSays,
  shopStands,
  takeBackShop
} from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { Field } from '../worker/field-table.ts'
import { CardSection } from './card-section.tsx'
import { CupSection } from './cup-section.tsx'
import { GROUPS } from './shop-groups.ts'

const EMPTY: Json = { castwright: 1 }

// Cup tests have a place of their own: an invented one must not be added by a press.
function withoutTests(f: Field): Field {
  return f.key === 'resins' && f.fields !== undefined
    ? { ...f, fields: f.fields.filter(k => k.key !== 'cupTests') }
    : f
}

/** The maker's own facts, by what they are for. All may be left as they are. */
export function ShopScreen() {
  useEffect(() => {
    readFields()
    void readShop()
  }, [])
  const table = fields.value?.shop
  const document = shop.value?.document ?? EMPTY
  return (
    <main class="shop" id="main">
      <section class="paper intro">
        <h2 class="big">{w.shop.title}</h2>
        <p class="f">{w.shop.says}</p>
        <p class="says-bad" role="alert">
          {shopSays.value}
        </p>
        <p class="stands" role="alert">
          {shopStands.value}
        </p>
        {shopBefore.value === null ? null : (
          <p class="over" role="status">
            {w.aside.over}
            <button type="button" class="link" onClick={() => void takeBackShop()}>
              {w.aside.takeBack}
            </button>
          </p>
        )}
        <AsideRows
          asides={shopAsides.value}
          lay={w.aside.layOver}
          onLay={a => layShopAside(a.number)}
          onDrop={a => dropShopAside(a.number)}
        />
      </section>
      {table === undefined
        ? null
        : GROUPS.map(([group, keys]) => (
            <section key={group} class="paper" aria-labelledby={`shop-${group}`}>
              <h2 id={`shop-${group}`}>{w.shop.groups[group]}</h2>
              <FieldTree
                fields={keys.flatMap(k => table.filter(f => f.key === k)).map(withoutTests)}
                document={document}
                at=""
                value={document}
                name={w.shop.title}
                onEdit={(_, patch) => void editShop(patch)}
              />
            </section>
          ))}
      <CupSection />
      <CardSection />
    </main>
  )
}
