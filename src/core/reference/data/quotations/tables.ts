/** Sentences and table cells that values stand in, of tables of universities and handbooks; numbered as in ../values/tables.ts. */
export const tables = `
@ cantwell-common
1|Acerola; Barbados cherry Malpighia glabra 0 32 85-90 -1.4 29.4 6-8 weeks
2|African horned melon; kiwano Cucumis africanus 13-15 50-60 90 L M 6 months
3|Amaranth; Pigweed Amaranthus spp. 0-2 32-36 95-100 VL M 10-14 days
4|Anise; Fennel Foeniculum vulgare 0-2 32-36 90-95 -1.1 30.1 2-3 weeks
5|--not chilling sensitive -1.1 30.0 90-95 -1.5 29.3 VH H 3-6 months
6|--chilling sensitive Yellow Newtown, Grimes Golden, McIntosh 4 40 90-95 -1.5 29.3 VH H 1-2 months
7|Apricot Prunus armeniaca -0.5-0 31-32 90-95 -1.1 30.1 M H 1-3 weeks
8|--Globe artichoke Cynara acolymus 0 32 95-100 -1.2 29.9 VL L 2-3 weeks
9|--Chinese artichoke Stachys affinia 0 32 90-95 VL VL 1-2 weeks
10|--Jerusalem artichoke Helianthus tuberosus -0.5-0 31-32 90-95 -2.5 27.5 VL L 4 months
11|Arugula Eruca vesicaria var. sativa 0 32 95-100 VL H 7-10 days
12|Asian Pear, Nashi Pyrus serotina; P. pyrifolia 1 34 90-95 -1.6 29.2 H H 4-6 months
13|Asparagus officinalis 2.5 36 95-100 -0.6 30.9 VL M 2-3 weeks
14|Atemoya Annona squamosa x A. cherimola 13 55 85-90 H H 4-6 weeks
15|--cv Fuerte, Hass 3-7 37-45 85-90 -1.6 29.9 H H 2-4 weeks
16|--cv. Fuchs, Pollock 13 55 85-90 -0.9 30.4 H H 2 weeks
17|--cv. Lula, Booth-1 4 40 90-95 -0.9 30.4 H H 4-8 weeks
@ cantwell-scientific
1|Abelmoschus esculentus Okra 7-10 45-50 90-95 -1.8 28.7 L M 7-10 days
2|Achras sapota Sapodilla, Chicosapote 15-20 59-68 85-90 H H 2 weeks
3|Actinidia chinensis Kiwifruit; 0 32 90-95 -0.9 30.4 L H 3-5 months
4|Agaricus, other genera Mushrooms 0 32 90 -0.9 30.4 VL M 7-14 days
5|Aglaia sp.; Lansium sp. Langsat; Lanzone 11-14 52-58 85-90 2 weeks
6|Mature bulbs, dry 0 32 65-70 -0.8 30.6 VL L 1-8 months
7|Green onions 0 32 95-100 -0.9 30.4 L H 3 weeks
8|Allium cepa var ascalonicum Shallots 0-2.5 32-36 65-70 -0.7 30.7 L L
9|Allium porrum Leek 0 32 95-100 -0.7 30.7 VL M 2 months
10|Allium sativum Garlic bulb -1-0 30-32 65-70 -2.0 28.4 VL L 6-7 months
11|Allium schoenoprasum Chives 0 32 95-100 -0.9 30.4 L H 2-3 weeks
12|Amaranthus spp. Amaranth; Pigweed 0-2 32-36 95-100 VL M 10-14 days
13|Anacardium occidentale Cashew apple 0-2 32-36 85-90 5 weeks
14|Ananas comosus Pineapple 7-13 45-55 85-90 -1.1 30.0 L L 2-4 weeks
15|Anethum graveolens Dill 0 32 95-100 -0.7 30.7 VL H 1-2 weeks
16|Annona cherimola Cherimoya; 13 55 90-95 -2.2 28.0 H H 2-4 weeks
17|Annona muricata Soursop 13 55 85-90 H H 1-2 weeks
18|A. squamosa x A. cherimola Atemoya 13 55 85-90 H H 2-4 weeks
19|Annona squamosa; Sweetsop; Sugar apple; 7 45 85-90 H H 4 weeks
@ produce-degradation
1|AppleR, F, H–1 to 490–952–4 months
2|ApricotR, H–0.5 to 090–951–2 weeks (3–4 weeks some cultivars)6 (0°)
3|AvocadoF, R, H5–1285–953–6 weeks35 (5°) 105 (10°)
4|Banana13–1490–952–4 days3140 (15°)
5|Blackberries ... –0.5 to 0 ... >90 ... 2–14 days ... 19 (0°)
6|Blueberry ... –0.5 to 0 ... >90 ... 2 weeks ... 6 (0°)
7|Cranberry ... 2 ... 90–95 ... 2–4 months ... 4 (0°)
8|Raspberry ... –0.5 to 0 ... >90 ... 2–5 days ... 17 (2°)
9|Strawberry ... 0 ... 90–95 ... 7 days ... 16 (0°)
10|Cherry (Sweet)R, F, H to <5 in 4hr–1 to 0>952–4 weeks8 (0°)
11|FigF–1 to 090–951–2 weeks6 (0°)
12|Grape Vinifera ... –1 to 0 ... 90–95 ... 3 (0°)
13|Rotundifolia ... –0.5 to 0 ... >90 ... 10 (2°)
14|Labrusca ... –0.5 to 0 ... 85–90 ... 3 (0°)
15|Grapefruit12–15956 weeks<10 (15°)
16|KiwiF after 48–72 hr curing090–954–5 months3 (0°)
17|Lemon7–1285–956 months11 (10°)
18|Lime10958 weeks<10 (10°)
19|Mango Mature green ... 10–13 7–885–90 9014–28 days35 (10°)16 (10°)
20|NectarineF, H–1 to 090–9514–18 days35 (0°)
21|Orange FL and TX CA and AZR, F0–13–885–90 90–9512 weeks4 (0°)
22|Orange FL and TX CA and AZR, F0–13–885–90 90–9512 weeks4 (0°)
23|Passion fruit Yellow PurpleR, F to 10°7–103–590–952 weeks3–5 weeks44 (5°)
24|Passion fruit Yellow PurpleR, F to 10°7–103–590–952 weeks3–5 weeks44 (5°)
25|PeachF, H–1 to 090–9514–28 days35 (0°)
26|Pear–190–9460–90 days3
27|Persimmon–1 to 190–953 mo6 (0°)
28|PineappleR, F7–1285–9514–20 days6 (10°)
29|Plums and fresh prunesF, H, R–1 to 090–9514–28 days33 (0°)
30|Melons Casaba, Crenshaw, and Canary ... 10 ... 90 – 95 ... 3 weeks
31|Honeydew ... 7 ... 95 ... 7–10 days ... 14 (10°)
32|Watermelon ... 10–15 ... 90 ... 2–3 weeks ... 8 (10°)
33|AsparagusH0–295–9914–21 days60 (0°)
34|Beans, SnapH5–7.595–1008–12 days34 (5°)
35|Beets With tops Topped ... 0 1–2 9898 10–14 days 5 (0°)
36|Beets With tops Topped ... 0 1–2 9898 10–14 days 5 (0°)
37|Broccoli I (liquid), H, F 0 98–100 2–3 weeks 21 (0°)
38|Brussel sprouts V, H, I, F 0 95–100 3–5 weeks 40 (0°)
39|Cabbage H, F 0 98–100 3–6 months 5 (0°)
40|Carrot H 0 98–100 7–9 months 15 (0°)
41|Cauliflower V, H, F 0 95–98 3 weeks 17 (0°)
42|Celery H, HV, V 0 95 5–7 weeks 15 (0°)
43|Corn, sweet V with top icing, H ... 0 ... 95–98 ... 4–6 days 41 (0°)
44|Cucumbers H, F 10–12.5 95 <14 days 26 (15°)
45|Eggplant H, F, R 10–12 90–95 14 days 69 (12.5°)
46|Endive V, H 0 95–100 2–3 weeks 45 (0°)
47|Garlic (bulbs) cured –1 to 0 60 –70 9 months 8 (0°)
48|Greens for cooking H, HV, I (liquid, top, or package) 0 95–98 2 weeks 21 (0°) - Spinach
49|Greens for cooking ... 21 (0°) - Spinach
50|Jicama 12.5–15 80–90 2–4 months 14 (15°)
51|TomatilloF, R5–1080–90≤3 weeks16 (10°)
52|Tomatoes Mature green RipeR, F to 20° for ripening to 12°for storage19–211390–95 90–957–28 days322 (15°)35 (20°)
53|Tomatoes Mature green RipeR, F to 20° for ripening to 12°for storage19–211390–95 90–957–28 days322 (15°)35 (20°)
54|Turnip090–954–5 months8 (0°)
55|Apples, certain cultivars 2–3b 36–38
56|Asparagus 0–2 32–36
57|Avocados 4.5–13b 40-55
58|Bananas 11.5–13b 53–56
59|Bean (lima) 1–4.5 34–40
60|Bean (snap) 7 45
61|Cranberries 2 36
62|Cucumbers 7 45
63|Eggplants 7 45
64|Ginger 7 45
65|Guavas 4.5b 40
66|Grapefruit 10 b 50
67|Lemons 11–13b 52–55
68|Limes 7–9 45–48
69|Mangoes 10–13 50–55
70|Melons, cantaloupe 2–5b 36–41
71|Melons, honeydew 7–10 45–50
72|Melons, casaba, Crenshaw and Persian 7–10 45–50
73|Okra 7 45
74|Oranges 3 b 38
75|Papayas 7 45
76|Passion fruit 10 50
77|Peppers, sweet 7 45
78|Pineapples 7–10b 45–50
79|Pomegranates 4.5 40
80|Potatoes 32 38
@ new-england
1|Asparagus | + | + | N | 32-36 | 95 | 1-2 weeks | L
2|Basil | + | N | 46-50 | 90-95 | 4-7 days | H
3|Beans, lima | + | + | N | 38-42 | 90-95 | 7-10 days | M
4|snap | + | + | N | 40-45 | 90-95 | 7-10 days | M
5|Beets, bunched | + | R | 32 | 1-2 weeks | I
6|Broccoli | + | E | 32 | 90-95 | 1-2 weeks | I
7|Brussels sprouts | + | + | + | + | R | 32 | 90-95 | 3-5 weeks | I
8|Cabbage | + | N | 32 | 90-95 | 3-6 weeks | I
9|Cabbage, Chinese | + | + | + | R | 32 | 90-95 | 4-8 weeks | I
10|Carrots, Topped | + | + | N | 32 | 90-95 | 6-7 months | L
11|Carrots, bunched | + | + | E | 32 | 90-95 | 1 month | I
12|Cauliflower | + | + | + | R | 32 | 90-95 | 2-4 weeks | I
13|Celery | + | R | 32 | 90-95 | 2-3 weeks | I
14|Collards & kale | + | + | R | 32 | 90-95 | 1-2 weeks | I
15|Cucumbers | + | + | N | 50 | 90-95 | 1-2 weeks | H
16|Eggplant | + | N | 50 | 90-95 | 1 week | H
17|Endive & escarole | + | R | 32 | 90-95 | 2-3 weeks | I
18|Kohlrabi | + | + | + | R | 32 | 90-95 | 2-4 weeks | I
19|Horseradish | + | N | 30-32 | 90-95 | 1 year | I
20|Leeks | + | + | + | R | 32 | 90-95 | 1-3 months | I
21|Lettuce, crisphead | + | N | 32-36 | 95 | 2-3 weeks | I
22|leaf & bibb | + | + | R | 32-36 | 95 | 1 week | I
23|romaine | + | R | 32-36 | 95 | 1-2 weeks | I
24|Muskmelon, 3/4 slip | + | + | R | 36-40 | 85-90 | 1-2 weeks | M
25|full slip + + R 32-36 85-90 4-7 days M
26|Okra + N 45-50 95 1 week VH
27|Onion, dry N 32 65-70 1-8 months I
28|green + + N 32 90-95 7-10 days I
29|Parsley + + E 32 95 1-2 months I
30|Parsnips + N 32 90-95 2-6 months I
31|Peas + + E 32 90-95 1-2 weeks I
32|Peppers + + N 45-50 90-95 2-3 weeks M
33|Potatoes, early + N 40 90 2-4 months L
@ crop-post-harvest
1|Cantaloupe 5 9 to 10 mg /kg-hr 10 to 100 μL kg-hr
2|Honeydew 5 8 mg /kg-hr Very low
3|Slicing 10 23 to 29 mg/kg-hr 0.6 μL/kg-hr (@ 20C)
4|Citrullus lanatus (watermelon) 10 6 to 9 mg/kg-hr
5|Cucurbita pepo (summer squash) 10 65 to 68 mg/kg-hr
6|Cucurbita moschata (buttercup squash) 12 88 to 110 mg/ kg-hr
7|Sechium edule (chayote) 5 4 mg/kg/hr
8|6 to 9 mg/kg-hr < 1.0 μL/kg-hr (@20C)
9|65 to 68 mg/kg-hr < 1.0 μL/kg-hr
@ jfst-table-4
1|Apple 0-4 90-95 2-6 m
2|Beetroot 0 95-99
3|Cabbage 0 95-99 5-6 m
4|Carrots 0 98-99 5-9 m
5|Cauliflower 0 95 2-4 w
6|Cucumber 10-13 90-95
7|Eggplant 8-10 90-95
8|Lettuce 1 95-99
9|Leeks 0 95 1-3 m
10|Oranges 0-4 85-90 3-4 m
11|Pears 0 90-95 2-5 m
12|Pumpkin 10-13 70-75
13|Spinach 0 95 1-2 w
14|Tomatoes 13-21 85-90
`;
