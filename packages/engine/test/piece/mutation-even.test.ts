import { spoiledByLot } from './mutation-half.ts'

spoiledByLot(0)
