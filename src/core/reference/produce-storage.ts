/**
 * Storage of each commodity, one line each: key, relative humidity in per cent, sources, ethylene production and
 * sensitivity (VL very low to VH very high), sources, top ice (y, n, or conflict where sources disagree), sources,
 * storage life at the recommended temperature, sources. Sources as in sources.ts; M means not read in a source.
 */
export const storageTable = `
apples | 90-95 | CW M | VH H | CW | n | MG | 3-6 months | CW M
apples-chilling-sensitive | 90-95 | CW PD | VH H | CW | n | MG | 1-2 months | CW PD
apricots | 90-95 | CW | M H | CW | n | MG | 1-3 weeks | CW
artichokes | 95-100 | CW | VL L | CW | y | MG | 2-3 weeks | CW
asparagus | 95-100 | UCD NE16 | VL M | CW | n | NE16 MG | 14-21 d | UCD NE16
avocados-hass | 85-95 | UCD CW | H H | CW | n | M | 2-4 weeks | UCD CW
bananas-green | 90-95 | UCD SL | M H | CT M | n | M | 1-4 weeks | UCD SL
basil | 90-95 | NE16 | VL H | M | n | NE16 | 4-7 d | NE16
beans-snap | 95-100 | NE16 PD | L M | CT | n | NE16 | 7-12 d | NE16 PD
beets | 95-98 | NE16 PD | VL L | M | y | MG NE16 | 10-14 d | NE16 PD
blackberries | 90-95 | UCD SL | L L | UCD CT | n | MG | 2-5 d | UCD SL
blueberries | 90-95 | UCD SL | L L | UCD M | n | MG | 1-2 weeks | UCD SL
broccoli | 95-100 | UCD PD | VL H | UCD | y | MG NE16 | 21-28 d at 32F; 14 d at 41F; 5 d at 50F | UCD PD
brussels-sprouts | 90-100 | NE16 PD | VL H | M | y | MG NE16 | 3-5 weeks | NE16 PD
cabbage | 90-100 | NE16 PD | VL H | CT | conflict | NE16 MG | 3-6 months (late crop) | NE16 PD
cantaloupe | 90-95 | UCD WF | H M | CT | y | NE16 | 12-21 d | UCD WF
carrots | 90-100 | NE16 PD | VL H | M | conflict | NE16 MG | 6-9 months | NE16 PD
cauliflower | 95-98 | UCD PD | VL H | UCD | conflict | NE16 MG | 3 weeks | UCD PD
celery | 98-100 | UCD | VL M | CT UCD | y | MG NE16 | 5-7 weeks | UCD
cherries-sweet | 90-95 | SL PD | VL L | CT | n | MG | 2-3 weeks | SL PD
chives | 95-100 | CW | L H | CW | y | M | 2-3 weeks | CW
cilantro | 95-100 | M | VL H | M | y | UCD | 3 weeks at 32F; 2 weeks at 41F | UCD
cranberries | 90-95 | UCD SL | L L | CT | n | M | 2-4 months | UCD SL
cucumbers | 95-95 | UCD | L H | UCD | n | NE16 | 10-14 d | UCD
dill | 95-100 | CW | VL H | CW | y | M | 1-2 weeks | CW
eggplant | 90-95 | PD NE16 | L M | CT M | n | NE16 | 7-14 d | PD NE16
garlic | 60-70 | CW PD | VL L | CW | n | MG | 6-7 months | CW PD
grapefruit | 85-95 | SL PD | VL M | M | n | M | 6 weeks | SL PD
grapes-table | 90-95 | UCD SL | VL L | UCD CT | n | MG | 1-6 months by cultivar | UCD SL
honeydew | 90-95 | WF PD | M H | M | n | M | 2-3 weeks | WF PD
kiwifruit | 90-95 | UCD CW | L H | CW | n | MG | 3-5 months | UCD CW
leeks | 95-100 | CW | VL M | CW | y | NE16 | 2 months | CW
lemons | 85-95 | PD GAG | VL M | M | n | M | 1-6 months | PD GAG
lettuce-iceberg | 95-100 | UCD NE16 | VL H | UCD | n | NE16 MG | 21-28 d at 32F; 14 d at 41F | UCD NE16
lettuce-leaf | 95-100 | NE16 | VL H | M | conflict | NE16 MG | 1 week (NE16) | NE16
lettuce-romaine | 95-100 | UCD NE16 | VL H | UCD | conflict | NE16 MG | 21 d at 32F; 14 d at 41F | UCD NE16
limes | 85-95 | SL PD | VL M | M | n | M | 6-8 weeks | SL PD
mangoes | 85-95 | UCD SL | M M | UCD M | n | M | 2-3 weeks | UCD SL
mushrooms | 90-95 | CW | VL M | CW | n | MG | 7-14 d | CW
okra | 90-95 | CW NE16 | L M | CW | n | NE16 | 7-10 d | CW NE16
onions-dry | 65-70 | CW UCD | VL L | CW | n | NE16 MG | 1-8 months | CW UCD
onions-green | 95-100 | CW NE16 | L H | CW | conflict | MG NE16 | 3 weeks (NE16: 7-10 d) | CW NE16
oranges-california-arizona | 90-95 | UCD | VL M | UCD CH | n | M | up to 3 months | UCD
oranges-florida-texas | 85-90 | UCD SL | VL M | UCD CH | n | MG | 8-12 weeks | UCD SL
papaya | 85-90 | SL M | M M | M | n | M | 1-3 weeks | SL M
parsley | 95-100 | NE16 | VL H | CH | y | MG NE16 | 1-2 months | NE16
peaches-nectarines | 90-95 | SL PD | H M | M | n | MG | 2-4 weeks | SL PD
pears-bartlett | 90-95 | UCD SL | H H | UCD M | n | MG | 2-7 months (type dependent) | UCD SL
peas-green | 90-98 | NE16 | VL M | M | y | MG NE16 | 1-2 weeks | NE16
peppers-bell | 90-95 | USU NE16 | L L | M | n | NE16 | 2-3 weeks | USU NE16
pineapple | 85-90 | CW SL | L L | CW | n | M | 2-4 weeks | CW SL
plums | 90-95 | PD M | M M | M | n | MG | 2-4 weeks | PD M
potatoes-table | 90-95 | M | VL M | M | n | M | 5-10 months | M
radishes | 95-100 | M | VL L | M | y | MG | 1-2 weeks bunched; longer topped | M
raspberries | 90-95 | UCD SL | L L | UCD | n | MG | 2-5 d | UCD SL
spinach | 95-98 | UCD | VL H | UCD | y | MG | 10-14 d | UCD
squash-summer | 80-95 | USU | L M | CT | n | M | 7-10 d | USU
strawberries | 90-95 | UCD SL | L L | UCD | n | MG | 5-7 d | UCD SL
sweet-corn | 95-98 | UCD NCS | VL L | CT | y | MG PD | 5-7 d (supersweet 8-21 d) | UCD NCS
sweet-potatoes | 85-90 | CH | VL L | CH | n | M | 6-10 months | UCD CH
tomatoes-mature-green | 90-95 | UCD NCS | L H | UCD M | n | M | 14 d at 55F; 21-28 d at 58-60F (NCS) | UCD NCS
tomatoes-ripe | 90-95 | UCD USU NCS | H L | UCD M | n | M | 3-10 d | UCD USU NCS
watermelon | 85-95 | WF USU PD | VL H | M | n | M | 2-3 weeks | WF USU PD
`;
