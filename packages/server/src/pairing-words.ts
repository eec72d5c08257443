/** 1024 plain words, ten bits each, to be read from one screen and typed on another. */
export const PAIRING_WORDS: readonly string[] = `
able acid actor adapt adult agree aisle alarm album alike alive alley allow almond alone along
amber amuse angle angry ankle apple april apron arch arise armor army aroma array art ash aside
asset atlas attic audio autumn avoid awake award badge bagel baker balance ball banana band banjo
bank barn barrel basin basket beach beam bear beat beaver bed bee beetle bell berry best better
bike birch bird biscuit black blade blank blast blend blimp blink block blue blush board boat body
boil bold bolt bone book boot border borrow bottle bounce bowl box brain branch brass brave bread
break breeze brick brief bright bring broad broom brother brown brush bucket budget buffalo build
bulb bunch bundle bunny burst bus bush butter button buyer cabin cable cake call calm camp canal
candle candy canoe canvas canyon captain car cargo carpet carrot carry cart cattle cedar ceiling
cello cement center cereal chair chalk chapter charm chart cherry chess chest chew chicken chief
chimney chin chip chorus church cider cinema circle citrus city civil claim clarify clay clerk
clever click cliff climb clinic cloth cloud clover club coach cobalt coconut code coin cold collar
color column comb come comet comfort common compass cook cool copper copy coral cord cork corn
corner cotton couch cough course cousin cover cow coyote crab cradle craft crane cream creek crew
cricket crisp cross crowd crown cruise crumb crunch crystal cube cuckoo curb curious curl current
curtain curve cushion custom cycle daisy damp dark date dawn day deal debate decade deck deer delta
depth desert device dial diary dice dig dinner dive dock doctor doll dolphin donkey dose double
down dozen draft dragon drama draw dream dress drift drill drink drive drop drum dry dune dust duty
early east echo edge egg eight elbow elm else ember empty errand even event ever exact eye face
fact fair faith fall family fan farm fast father feast feather fence ferry few fiber field fifty
fig filter final finch find finger firm first fit five flag flame flash flat flax flint flip float
flock floor flour fluid flute foam focus fold folk forest fork form fort forum fossil found fox
free fresh friend frog front fuel full fun funnel fur future galaxy gallery gap garden gauge gem
gentle giant gift giraffe give glass glide globe glue goat gold goose gourd grain grand grape graph
grass gravel green grid grill grip group grove grow guard guess guide guitar gull gum habit hail
hair half hall hammer hamper happy harbor hard harvest hat hay hazel head heart hedge height hello
helmet hen heron hill hinge hint hive hobby hold holly home honest honey hood hoof hook hoop hope
horn horse host house hub hug humble hut ice icon image inch inlet inner input insect iris iron
island ivy jacket jade january jar jasmine jaw jazz jewel job join jolly journal july jump jungle
junior just kayak keen keep kettle key kid kind king kiosk kit kitchen kite kitten knee knob knock
knot koala label lace ladder lady lake lamp land lane lantern large laser last late laundry lava
lawn layer lazy lead leaf learn leather left leg lemon length lens lentil level lever library lift
lilac lily link lip list little live llama load loaf lobby lobster local lock loft log long lotus
loud lounge love lucky lumber lunar lunch lung lyric magic magnet maid mango manor map maple march
margin marine mark market marsh mask mast match math maze meadow meal melody melon member memory
metal meter milk mill mind mint minute mirror mix mobile modern moment monkey moon morning moss
moth motor mount mouse move muffin muscle music myth nail narrow nation native nature need nest net
never new nice night nine noble noise noodle noon north nose note novel number nurse nut oak oasis
odd offer office often onion open opera orange orchard order organ other outer oval oven owl owner
pad page paint pair palace palm pan panda panel paper parade park parrot party path patrol pattern
pause peace peach peak pear pedal pelican pen penny people perfect permit person petal phone photo
piano piece pig pillow pin pine pink pioneer pipe pitch pizza place plain planet play plus pocket
poem poet point polar pole polish pond pony poplar porch port post pot powder power present press
price pride prince print proof public pudding pump pumpkin purple puzzle quail queen quest quick
quiet quilt quiz rabbit radar radish raft rail raisin rally ranch range rapid razor reach ready
reason recipe record red reef region relax relay relief remind reply rescue rest result reward
rhythm ribbon rice rich ride right ring ripple rise river roast robin robot rock rocket rodeo roll
roof room root rose rough rubber ruby rumor rural rust saddle safe sage sail salad salt same sample
sand satin sauce sausage save scarf scene school science score scout screen sea search seat second
secret seed sell sense series seven shade shadow share shark sharp shed shelf shelter sherry shield
shine ship shirt shoe shop shore short shoulder shovel show shower shrimp side sign silent silk
silver simple since sing siren sister six skate ski skill skin skirt sky sled sleep sleeve slide
slim slow small smile smoke smooth snack snail snow soap soccer social sock sofa soft solid solo
song soon sorry sort soul sound soup south spark speak spear speed spell sphere spice spider spin
spirit splash spoon sport spot spray spruce square squid stable stadium staff stage stamp stand
state statue stay steam steel step stereo stick sting stone stool store story stove stream street
strike stripe strong studio study style sugar sun sunset supper surf sweet swift swim swing symbol
syrup tackle tail talk tank tape target taste tavern team ten tent term test text thank thick thin
thing thirty thread throat thumb thunder ticket tide tie timber tin tiny tip tire title today toe
token tone tongue tool tooth torch total touch tour towel tower town toy track trade trail train
travel tree trend tribe trick trim trip trophy truck true trumpet trunk trust try tube tulip tuna
tunnel turkey turn turtle twelve twenty twig two
`
  .trim()
  .split(/\s+/)
