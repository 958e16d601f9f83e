/**
 * Goods of the reference library, one a line: key, name, other trade names that mean the same goods, Spanish name,
 * other Spanish names; lists are parted by semicolons.
 */
export const goodsLines = `
acerola|Acerola|Barbados cherry|Acerola
african-horned-melon|African horned melon|kiwano|Pepino cornudo|kiwano
amaranth|Amaranth leaves|amaranth; pigweed|Quelites de amaranto|amaranto
apples|Apples (not chilling-sensitive)|apple; apples|Manzanas (no sensibles al frío)|manzana; manzanas
apples-chilling-sensitive|Apples (chilling-sensitive: Yellow Newtown, Grimes Golden, McIntosh)|mcintosh; yellow newtown; grimes golden|Manzanas (sensibles al frío: Yellow Newtown, Grimes Golden, McIntosh)
apricots|Apricots|apricot|Chabacanos|chabacano; albaricoque; albaricoques; damasco
artichokes|Artichokes, globe|artichoke; globe artichokes|Alcachofas|alcachofa
arugula|Arugula|rocket|Arúgula|rúcula
asian-pears|Asian pears|asian pear; nashi|Peras asiáticas|pera asiática; nashi
asparagus|Asparagus||Espárragos|espárrago
atemoya|Atemoya||Atemoya
avocados-hass|Avocados, Hass, mature-green|avocado; avocados; hass avocados|Aguacates Hass, verde maduro|aguacate; aguacates; palta
bananas-green|Bananas, green|banana; bananas|Plátanos verdes|plátano; plátanos; banano
basil|Basil|sweet basil|Albahaca
bean-sprouts|Bean sprouts|mung bean sprouts|Germinado de frijol|germinado
beans-lima|Beans, lima|lima beans; butter beans|Habas lima|frijol lima
beans-snap|Beans, snap|green beans; snap beans; string beans|Ejotes|ejote; judías verdes
beef|Beef||Carne de res|res; carne de vacuno
beets|Beets, bunched|beets; beet; beetroot, bunched|Betabeles en manojo|betabel; betabeles; remolacha
beets-topped|Beets, topped|topped beets|Betabeles sin hojas
belgian-endive|Belgian endive|witloof; witloof chicory|Endivia belga|endibia
blackberries|Blackberries|blackberry|Zarzamoras|zarzamora; moras
blueberries|Blueberries|blueberry|Arándanos azules|arándano azul; mora azul
bok-choy|Bok choy|pak choy; buk choy; pak choi|Bok choy|pak choi
boysenberries|Boysenberries|boysenberry|Moras boysen|boysenberry
breadfruit|Breadfruit||Fruta de pan|árbol del pan
broccoli|Broccoli||Brócoli|brécol
brussels-sprouts|Brussels sprouts|brussels sprout|Coles de Bruselas|col de Bruselas
butter|Butter|chilled butter|Mantequilla
butter-frozen|Butter, frozen|frozen butter|Mantequilla congelada
cabbage|Cabbage|green cabbage; red cabbage; round cabbage|Repollo|col
cactus-leaves|Cactus leaves|nopales; nopalitos; cactus pads|Nopales|nopal; nopalitos
cactus-pears|Cactus pears|prickly pears; tunas (fruit)|Tunas (fruta)|tuna (fruta); higo chumbo
caimito|Caimito|star apple|Caimito
canary-melon|Canary melon||Melón canario
cantaloupe|Cantaloupe|cantaloupes; muskmelon; rock melon|Melón cantalupo|cantalupo; melón chino
carambola|Carambola|starfruit; star fruit|Carambola
carrots|Carrots, topped|carrot; carrots; topped carrots|Zanahorias sin hojas|zanahoria; zanahorias
carrots-bunched|Carrots, bunched|bunched carrots|Zanahorias en manojo
casaba|Casaba melons|casaba|Melones casaba|casaba
cashew-apple|Cashew apple||Marañón (fruto)|marañón
cauliflower|Cauliflower||Coliflor
celeriac|Celeriac|celery root|Apio nabo
celery|Celery||Apio
chard|Chard|swiss chard; silverbeet|Acelgas|acelga
chayote|Chayote|choko; mirliton|Chayotes|chayote
cherimoya|Cherimoya||Chirimoya
cherries-sour|Cherries, sour|sour cherries; tart cherries|Cerezas ácidas|guindas
cherries-sweet|Cherries, sweet|cherries; cherry; sweet cherries|Cerezas dulces|cereza; cerezas
chervil|Chervil||Perifollo
chicory|Chicory||Achicoria
chinese-artichoke|Chinese artichoke|crosne|Alcachofa china|crosne
chinese-cabbage|Chinese cabbage|napa cabbage; napa; wombok|Col china|col napa
chives|Chives|chive|Cebollín|cebollinos
chocolate|Chocolate||Chocolate
choy-sum|Choy sum||Choy sum
cilantro|Cilantro|coriander leaves; chinese parsley|Hojas de cilantro|cilantro
coconuts|Coconuts|coconut|Cocos|coco
cod|Cod||Bacalao fresco|bacalao
collards|Collards|collard greens|Berza|berzas
corn-salad|Mache|corn salad; lamb's lettuce|Canónigos
cranberries|Cranberries|cranberry|Arándanos rojos|arándano rojo
crenshaw|Crenshaw melons|crenshaw|Melones crenshaw
cucumbers|Cucumbers|cucumber|Pepinos|pepino
currants|Currants|red currants; black currants|Grosellas|grosella
custard-apple|Custard apple||Anona
cut-flowers|Cut flowers|flowers|Flores cortadas|flores; flor cortada
cut-flowers-tropical|Cut flowers, tropical|tropical flowers|Flores cortadas tropicales|flores tropicales
daikon|Daikon|daikon radish; black radish|Rábano daikon|daikon
dairy-chilled|Yoghurt, cream and fresh cheese|yogurt; yoghurt; cream; fresh cheese|Yogur, crema y queso fresco|yogur; crema; queso fresco
dates|Dates|fresh dates|Dátiles|dátil
dewberries|Dewberries|dewberry|Zarzas azules|dewberry
dill|Dill||Eneldo
duku|Duku||Duku
durian|Durian||Durián
eggplant|Eggplant|aubergine|Berenjena|berenjenas
eggs-shell|Eggs, shell|eggs; egg; shell eggs|Huevo con cascarón|huevo; huevos
elderberries|Elderberries|elderberry|Bayas de saúco|saúco
endive|Endive|curly endive|Escarola rizada|endivia rizada
epazote|Epazote||Epazote
escarole|Escarole||Escarola
feijoa|Feijoa|pineapple guava|Feijoa
fennel|Fennel|anise; finocchio|Hinojo
figs-fresh|Figs, fresh|figs; fig|Higos frescos|higo; higos
fish-fresh|Fish, fresh|fresh fish; fish|Pescado fresco|pescado
fish-frozen|Fish, frozen|frozen fish; frozen seafood; frozen shrimp|Pescado congelado|camarón congelado; mariscos congelados
food-tcs|Food under time and temperature control for safety|TCS food; potentially hazardous food; ready-to-eat food|Alimentos con control de tiempo y temperatura por inocuidad|alimentos TCS
frozen-food|Frozen food|frozen foods; quick-frozen food; deep-frozen food|Alimentos congelados|congelados; alimentos ultracongelados
frozen-food-other|Frozen food, not quick-frozen||Alimentos congelados, no ultracongelados
gai-lan|Gai lan|chinese broccoli; chinese kale|Gai lan|brócoli chino
game-large|Game, large|large game; venison|Caza mayor|venado
game-small|Rabbits and small game|rabbit; small game|Conejo y caza menor|conejo
garlic|Garlic||Ajo|ajos
ginger|Ginger|ginger root|Jengibre
gooseberries|Gooseberries|gooseberry|Grosellas espinosas|uva espina
grapefruit|Grapefruit|grapefruits|Toronja|toronjas; pomelo
grapes-american|Grapes, American|concord grapes; labrusca grapes|Uvas americanas|uva concord
grapes-muscadine|Grapes, muscadine|muscadines; muscadine grapes|Uvas moscatel americanas|uva muscadina
grapes-table|Grapes, table|grapes; table grapes; grape|Uvas de mesa|uva; uvas
greens|Greens, leafy|leafy greens; greens for cooking; mustard greens; turnip greens|Hojas verdes|verduras de hoja
guavas|Guavas|guava|Guayabas|guayaba
haddock|Haddock||Eglefino
halibut|Halibut||Fletán|hipogloso
herring|Herring||Arenque
honeydew|Honeydew|honeydew melon; honeydews|Melón verde|melón honeydew
horseradish|Horseradish||Rábano picante
ice-cream|Ice cream||Helado|helados
jackfruit|Jackfruit||Yaca|jackfruit
jerusalem-artichokes|Jerusalem artichokes|sunchokes; topinambour|Topinambur|tupinambo
jicama|Jicama|yam bean|Jícama
juice-concentrate|Fruit juice, concentrated|concentrated fruit juice|Jugo concentrado de fruta|jugo concentrado
kale|Kale||Col rizada|kale
kiwifruit|Kiwifruit|kiwi; kiwis|Kiwis|kiwi
kohlrabi|Kohlrabi||Colinabo|colirrábano
kumquats|Kumquats|kumquat|Kumquats|naranjita china
lamb|Lamb||Carne de cordero|cordero
langsat|Langsat|lanzones|Langsat
leeks|Leeks|leek|Poros|poro; puerro; puerros
lemons|Lemons|lemon|Limones amarillos|limón amarillo; limón
lettuce-iceberg|Lettuce, iceberg|iceberg; crisphead lettuce; head lettuce; iceberg lettuce|Lechuga bola|lechuga iceberg
lettuce-leaf|Lettuce, leaf|leaf lettuce; green leaf; red leaf; bibb|Lechuga de hoja
lettuce-romaine|Lettuce, romaine|romaine; cos lettuce; romaine lettuce|Lechuga romana|romana; lechuga orejona
limes|Limes|lime|Limones verdes|limón verde; lima
loganberries|Loganberries|loganberry|Frambuesas logan|loganberry
longan|Longan||Longan
loquats|Loquats|loquat|Nísperos|níspero
lychees|Lychees|lychee; litchi|Lichis|lichi; litchi
mackerel|Mackerel, Atlantic|mackerel|Caballa del Atlántico|macarela
mangoes|Mangoes, mature-green|mango; mangoes; mangos|Mangos, verde maduro|mango; mangos
mangosteen|Mangosteen||Mangostán
marjoram|Marjoram||Mejorana
meat-fresh|Meat, fresh (red meat)|fresh meat; red meat; meat|Carne fresca (carne roja)|carne; carne fresca
meat-minced|Meat, minced|minced meat; ground meat; ground beef|Carne molida|carne picada
meat-products|Meat products|sausages; ham|Productos cárnicos|embutidos; jamón
milk|Milk|raw milk; pasteurized milk; market milk|Leche|leche cruda; leche pasteurizada
mint|Mint|mints|Menta|hierbabuena
mitsuba|Mitsuba||Mitsuba
mushrooms|Mushrooms|mushroom|Champiñones|champiñón; setas; hongos
offal-red|Offal, red|offal; red offal|Menudencias rojas|vísceras; despojos
okra|Okra||Quingombó|ocra; okra
onions-dry|Onions, dry|onions; onion; dry onions|Cebollas secas|cebolla; cebollas
onions-green|Onions, green|green onions; scallions|Cebollitas de cambray|cebollitas; cebolla de cambray; cebolla verde
oranges-california-arizona|Oranges, California and Arizona|oranges, california; navel oranges, california|Naranjas de California y Arizona
oranges-florida-texas|Oranges, Florida and Texas|oranges, florida; oranges, texas|Naranjas de Florida y Texas
oregano|Oregano||Orégano
papaya|Papaya|papayas|Papayas|papaya
parsley|Parsley||Perejil
parsnips|Parsnips|parsnip|Chirivías|chirivía
passion-fruit-purple|Passion fruit, purple|passion fruit; purple passion fruit|Maracuyá morada|maracuyá; granadilla
passion-fruit-yellow|Passion fruit, yellow|yellow passion fruit|Maracuyá amarilla
peaches-nectarines|Peaches and nectarines|peaches; nectarines; peach; nectarine|Duraznos y nectarinas|durazno; duraznos; nectarina; nectarinas; melocotón
pears-bartlett|Pears, Bartlett|pears; pear; bartlett pears|Peras Bartlett|pera; peras
pears-winter|Pears, Anjou, Bosc and Comice|anjou pears; bosc pears; comice pears; winter pears|Peras Anjou, Bosc y Comice|peras Anjou; peras Bosc
peas-edible-pod|Peas, edible-pod|snow peas; sugar snap peas; snap peas|Chícharos de vaina comestible|tirabeques; chícharo chino
peas-green|Peas, green, in pod|green peas; peas|Chícharos en vaina|chícharo; chícharos; guisantes
peas-southern|Peas, southern|southern peas; cowpeas; black-eyed peas, fresh|Frijol de castilla fresco|caupí
peppers-bell|Peppers, bell|bell peppers; sweet peppers; capsicum|Pimientos|pimiento; pimiento morrón; chile morrón
peppers-hot|Peppers, hot|hot peppers; chili peppers; jalapeños; jalapenos|Chiles|chile; chile jalapeño; jalapeño
perch|Perch||Perca
perishable-food|Perishable food and drink|perishable food|Alimentos y bebidas perecederos|perecederos
persian-melon|Persian melons|persian melon|Melones persas
persimmons|Persimmons|persimmon|Caquis|caqui; persimón
pineapple|Pineapple|pineapples|Piña|piñas; ananá
plums|Plums and fresh prunes|plum; plums; prunes|Ciruelas|ciruela
poinsettias|Poinsettias|poinsettia|Nochebuenas|flor de nochebuena
pollock|Pollock, Atlantic|pollock|Abadejo del Atlántico|abadejo
pomegranates|Pomegranates|pomegranate|Granadas|granada
pork|Pork||Carne de cerdo|cerdo
potatoes-early|Potatoes, early crop|early potatoes; new potatoes|Papas tempranas|papa temprana; papa cambray
potatoes-table|Potatoes, table stock|potatoes; potato|Papas de mesa|papa; papas; patatas
poultry-fresh|Poultry, fresh|fresh poultry; poultry; chicken|Aves frescas|pollo; pollo fresco
poultry-frozen|Poultry, frozen|frozen poultry; frozen chicken|Aves congeladas|pollo congelado
produce-cut|Cut vegetables, ready to eat|fresh-cut vegetables; fresh-cut produce; cut vegetables; bagged salad; cut leafy greens|Verduras cortadas, listas para comer|verduras cortadas; ensalada en bolsa
pumpkins|Pumpkins|pumpkin|Calabazas|calabaza
quinces|Quinces|quince|Membrillos|membrillo
radicchio|Radicchio||Radicchio|achicoria roja
radishes|Radishes|radish|Rábanos|rábano
rambutan|Rambutan||Rambután
raspberries|Raspberries|raspberry|Frambuesas|frambuesa
rhubarb|Rhubarb||Ruibarbo
rosemary|Rosemary||Romero
rutabagas|Rutabagas|rutabaga; swede|Rutabagas|rutabaga; nabo sueco
sage|Sage||Salvia
salmon|Salmon||Salmón
salsify|Salsify||Salsifí
sapodilla|Sapodilla|chico; chikoo|Chicozapote|zapote chico
savory|Savory||Ajedrea
shallots|Shallots|shallot|Chalotes|chalote; echalote
shiso|Shiso|perilla|Shiso|perilla
soursop|Soursop|guanabana|Guanábana
spinach|Spinach||Espinaca|espinacas
squash-summer|Squash, summer|zucchini; courgettes; summer squash; yellow squash|Calabacitas|calabacita; calabacín
squash-winter|Squash, winter|winter squash; butternut squash; acorn squash|Calabazas de invierno|calabaza de invierno
strawberries|Strawberries|strawberry|Fresas|fresa; frutillas
sugar-apple|Sugar apple|sweetsop|Anona blanca|saramuyo
sweet-corn|Sweet corn|corn; corn on the cob|Maíz dulce|elote; elotes
sweet-potatoes|Sweet potatoes|sweet potato; sweetpotatoes; yams|Camotes|camote; batata
tamarillos|Tamarillos|tree tomato|Tomates de árbol|tamarillo
tangelos|Tangelos|tangelo; minneola|Tangelos|tangelo
tangerines|Tangerines and mandarins|tangerines; mandarins; clementines; tangerine|Mandarinas|mandarina; clementina
taro|Taro|dasheen|Taro|malanga
tarragon|Tarragon||Estragón
thyme|Thyme||Tomillo
tomatillos|Tomatillos|tomatillo|Tomatillos|tomate verde; tomatillo
tomatoes-mature-green|Tomatoes, mature-green|mature-green tomatoes; green tomatoes|Jitomates, verde maduro
tomatoes-ripe|Tomatoes, light red to firm ripe|ripe tomatoes|Jitomates, de rojo claro a maduro firme
turnips|Turnips|turnip|Nabos|nabo
veal|Veal||Carne de ternera|ternera
water-chestnuts|Water chestnuts||Castañas de agua
watercress|Watercress||Berros|berro
watermelon|Watermelon|watermelons|Sandía|sandías
`;
