"""Vocabulary of pictures: words that mean the same, or nearly, and phrases that are one word.

Common speech of owners and dealers beside the terms of heraldry. The heraldic terms and their
meaning: Parker, "A Glossary of Terms used in Heraldry", and Fox-Davies, "A Complete Guide to
Heraldry" (both from memory); the rest is common practice. The lists are vocabulary, not facts about
marks: which devices there are, and what they are called, stands in the library.
"""

#: each line: words of one meaning; the first stands for all
SAME = """
lion bigcat
leopard panther pard
lizard gecko newt salamander
axe hatchet tomahawk halberd battleaxe poleaxe chopper
sword blade rapier saber sabre cutlass scimitar
dagger poniard stiletto dirk dirc
knife cutter penknife
spear lance pike javelin harpoon
arrow dart shaft
arrowhead pheon broadarrow
boar pig hog sanglier swine warthog
dog hound talbot cur mutt puppy
rabbit bunny coney hare leveret
stag deer hart buck elk moose reindeer hind doe roebuck
sheep ram lamb ewe fleece
goat ibex chamois billy
cow bull ox cattle steer calf
horse pony steed mare stallion foal
bear bruin grizzly
fox reynard
elephant tusker
camel dromedary
monkey ape chimp
squirrel
dragon wyvern cockatrice
griffin griffon gryphon
unicorn licorne
fish trout salmon carp herring
dolphin porpoise
cock rooster cockerel chicken hen coq fowl capon
swan cygnet
goose gander
duck mallard
eagle hawk falcon condor kite
owl
dove pigeon
stork heron crane egret
bird martlet songbird finch sparrow
grouse capercaillie capercailzie blackcock woodcock pheasant
peacock peafowl
parrot parakeet cockatoo popinjay
hoopoe
bee wasp bumblebee honeybee
beetle bug cockchafer ladybird ladybug insect scarab
snake serpent adder cobra viper asp
crab crayfish crabe lobster
turtle tortoise terrapin
snail escargot
shell scallop escallop cockle clam seashell
woman lady female girl maiden goddess damsel dame she
man male gentleman bloke fellow guy he
king monarch sovereign ruler emperor royal caesar
queen empress
saint st
child boy baby putto cherub kid infant
angel cherubim seraph archangel
monk friar hermit
knight warrior soldier
rider horseman cavalier horseback mounted
helmet helm helmeted
hat cap bonnet headgear
headdress tiara kokoshnik headwear diadem headscarf
crown coronet
beard bearded whiskers
hair mane
neck throat
head bust profile portrait
face mask visage
hand palm glove fist gauntlet
foot paw claw pad
arm forearm
wing pinion
feather plume quill
nose snout trunk proboscis
tail
horn antler
eye
heart
skull cranium
tree bush shrub
fir pine spruce conifer
pinecone pyr fircone artichoke
acorn oaknut
leaf foliage leafy frond
branch twig sprig bough
flower blossom bloom floweret
rose rosette
lily lis lys fleur
thistle
tulip
trefoil clover shamrock threeleaf
cinquefoil
quatrefoil
grape vine
sheaf bundle garb bale bunch
wheat corn grain barley rye
apple
pear
castle fort fortress keep citadel
tower turret spire
gate gateway portal door doorway
church cathedral chapel kirk
house hut cottage home
bridge viaduct arch
wall battlement
mountain hill peak mount summit
ship galleon caravel frigate lymphad galley vessel sail sailing yacht
boat skiff canoe rowing barge
anchor kedge grapnel
wheel cartwheel
cog gear cogwheel
key
hammer mallet maul gavel
scales scale balance
harp
lyre cithara
bell campana
hourglass sandglass eggtimer
lamp lantern
torch flambeau
candle candlestick
umbrella parasol
flag pennant pennon banner ensign standard streamer
shield escutcheon arms badge buckler
cross crucifix
saltire diagonal crossed
star mullet estoile asterisk
sun sunburst phoebus
moon crescent halfmoon increscent decrescent lune
globe world earth
orb mound
comet
flame fire burning fiery
lightning thunderbolt
ring circle annulet round circular hoop
ball pellet roundel dot bead globule
triangle delta wedge threecornered triangular
pyramid
square
lozenge diamond rhombus losange fusil
hexagon sixsided
octagon eightsided
tent pavilion marquee
tepee tipi wigwam
mitre miter
crosier crozier
portcullis grille grating
fasces rod stick staff lictor
sickle scythe
plough plow
spade shovel
cup goblet chalice beaker mug
vase urn amphora
ewer jug pitcher
barrel tun cask
teapot kettle
letter initial character
script signature writing inscription calligraphy
tughra cipher cypher monogram
ladder steps
wreath garland
knot bow
pillar column
sceptre scepter
trumpet bugle clarion
stitch
two double twin pair both
three triple
four
five
six
seven
half demi halved dimidiated cut
walking passant striding walk pacing
rampant rearing upright hindlegs erect
standing statant stand
seated sitting sejant sits sat
lying couchant
flying volant fly
swimming floating
displayed outspread spread outstretched
running courant
facing looking
guardant gardant lookingout
backwards regardant
torn erased ragged jagged severed
couped
left dexter
right sinister
front frontal affronty cabossed caboshed forward
inverted upsidedown
incuse sunk sunken intaglio stamped
raised relief cameo
holding holds hold carrying grasping clutching
killing slaying spearing stabbing
water
wine
prickly spiky thorny spiny
long
old elderly aged ancient
winged
russian russia
soviet ussr communist
arabic persian islamic ottoman turkish
chinese china
japanese japan
egyptian egypt
scottish scotch scots scotland
irish ireland
french france
german germany
dutch holland netherlands
swiss switzerland
swedish sweden
danish denmark
norwegian norway
mexican mexico
italian italy
roman
"""

#: each line: a word, and words that it may be said for, or that are said for it
NEAR = """
cat: lion leopard tiger lynx
lion: leopard tiger
beast animal creature quadruped: lion leopard dog horse bear boar stag sheep goat cow
bird: eagle cock swan goose duck owl dove stork grouse hoopoe parrot swallow pelican
boar: dog
dog: lion fox wolf
king queen: crown head
man: king knight monk person figure
woman: queen person figure
person figure: man woman saint angel
helmet: hat headdress winged
hat: headdress crown
crown: headdress
headdress: crown
face: head
spider: crab
beetle: bee weevil
fly: bee beetle
hook: anchor
flower: rose lily thistle tulip
lily: flower
prickly: thistle
nut: acorn
knife: dagger sword
dagger: sword
boat: ship
castle: tower gate
tower: castle
mountain: triangle pyramid volcano
pyramid: triangle
tent: tepee triangle
leaf: trefoil
ball: orb globe
sheaf: wheat
crescent: moon
script: letter
tughra: arabic script
foot: bear cat
pinecone: pineapple
pole: rod spear staff
stick: rod spear staff
erased: neck
saltire: cross
walking: standing
rampant: standing
"""

#: words that belong together, written as one, and closed compounds written as several
PHRASES = {
    "big cat": "lion", "large cat": "lion", "hind legs": "rampant", "back legs": "rampant",
    "hind paws": "rampant", "paw up": "walking", "paw raised": "walking", "raised paw": "walking",
    "forepaw": "walking", "half moon": "moon", "new moon": "moon", "halfmoon": "moon",
    "egg timer": "hourglass", "oak nut": "acorn", "pine cone": "pinecone", "fir cone": "pinecone",
    "torn off": "erased", "cut off": "erased", "broken off": "erased", "in an x": "crossed",
    "like an x": "crossed", "coat of arms": "arms", "sea shell": "shell", "fleur de lis": "lily",
    "fleur de lys": "lily", "fleur de lit": "lily", "flower de luce": "lily", "war axe": "axe",
    "battle axe": "axe", "pole axe": "axe", "upside down": "inverted", "top down": "inverted",
    "two headed": "two headed", "half length": "half", "looking out": "guardant",
    "looking at you": "guardant", "facing you": "guardant", "facing out": "guardant",
    "full face": "front", "side view": "profile", "side on": "profile", "egg cup": "cup",
    "on horseback": "rider", "on a horse": "rider", "on horse": "rider", "chess rook": "castle",
    "clover leaf": "trefoil", "three leaf clover": "trefoil", "three leaved": "trefoil",
    "cat paw": "paw", "paw print": "paw", "foot print": "paw", "footprint": "paw",
    "water lily": "lotus", "pointed hat": "cone hat", "wheatsheaf": "wheat sheaf",
    "wheatsheaves": "wheat sheaf", "horseshoe": "horseshoe", "sea horse": "seahorse",
    "sun rays": "sun", "shooting star": "comet", "wild pig": "boar", "broad arrow": "arrowhead",
    "arrow head": "arrowhead", "spear head": "arrowhead", "church tower": "church",
    "st bernard": "bernard", "saint bernard": "bernard", "crossed out": "crossed",
    "wheat ear": "wheat ear", "ear of corn": "wheat ear", "man in the moon": "moon face",
    "water bag": "boujet", "water budget": "boujet", "water bouget": "boujet", "bouget": "boujet",
    "cross of st andrew": "saltire cross", "st andrew cross": "saltire cross",
}  # fmt: skip

IRREGULAR = {
    "leaves": "leaf", "sheaves": "sheaf", "wolves": "wolf", "knives": "knife", "women": "woman",
    "men": "man", "children": "child", "mice": "mouse", "geese": "goose", "oxen": "ox",
    "feet": "foot", "teeth": "tooth", "axes": "axe", "halves": "half", "lilies": "lily",
    "pennies": "penny", "fishes": "fish", "stuck": "stick", "feathery": "feather",
    "petalled": "petal", "horned": "horn", "crowned": "crown", "headed": "head",
    "towered": "tower", "turreted": "tower", "masted": "mast", "necked": "neck",
    "pointed": "point", "winged": "wing", "rayed": "ray", "snouted": "snout", "crested": "crest",
    "tailed": "tail", "lobed": "lobe", "leaved": "leaf", "wings": "wing", "bearded": "beard",
    "helmeted": "helmet", "walks": "walking", "stands": "standing", "flies": "fly",
}  # fmt: skip

_SAYS_NOTHING = """
a an the of with in on and or its it his her their by to at from as is are be has have having mark device
symbol stamp stamped picture thing something looks look like shape shaped sort kind some maybe perhaps
possibly small little tiny large big single one up out off top above below under over beside inside
against near next there punch hallmark image motif sign silver who which that this into onto
"""
#: words that say nothing about what is seen
FILLER = frozenset(_SAYS_NOTHING.split())
