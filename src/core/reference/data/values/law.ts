/** Published values of texts of law and standards; see ../../published-values.ts for the form of a line. */
export const law = `
@ 21-cfr-118.4
§ 118.4(e) Refrigeration
1|eggs-shell|storage-or-transport ..45 °F (ambient; from 36 hours after lay)
@ 9-cfr-590.50
§ 590.50(a)
1|eggs-shell|storage-or-transport ..45 °F (packed for the ultimate consumer; ambient)
@ 9-cfr-381.66
§ 381.66(f)(1)
1|poultry-fresh|storage ..36 °F [held before freezing]
§ 381.66(f)(2)
2|poultry-frozen|storage ..0 °F (internal, within 72 hours of entering the freezer)
@ 63-fr-45663
§ Abstract
1|eggs-shell|storage-or-transport ..45 °F (packed for consumer use; ambient)
@ 02-ncac-09o.0104
§ (b)
1|eggs-shell|transport ..45 °F (after grading and packing; ambient)
@ 21-cfr-1250.27
§ whole section
1|perishable-food|storage ..50 °F (on conveyances (land and air))
@ delaware-food-code
§ (A)(2)
1|food-tcs|storage ..41 °F (cold holding)
§ (B)
2|eggs-shell|storage ..45 °F (untreated; refrigerated equipment, ambient)
@ washington-food-code
§ (1)(b)
1|food-tcs|storage ..41 °F (cold holding)
§ (2)
2|eggs-shell|storage ..45 °F (untreated; ambient)
@ maine-food-code
§ 3-501.12(A)
1|food-tcs|storage ..41 °F [frozen food being slacked]
§ 3-501.11
2|frozen-food|storage "maintained frozen" ["maintained frozen" (no number in the section)]
@ 3-ccr-626
§ (b)
1|milk|storage-or-transport ..45 °F (market milk, cream, half and half; in commerce)
§ (d)
2|milk|transport 50.. °F [single container excluded from sale at]
@ california-fac-35782
§ whole section
1|milk|transport ..45 °F (raw or pasteurized, until delivered to the consumer)
@ california-fac-35783
§ whole section
1|milk|transport ..50 °F [raw, in transit on bulk milk tankers]
@ 77-iac-785.330
§ whole section
1|milk|storage ..45 °F (raw, farm bulk tank)
@ atp-coch
§ table above 0 °C (annex 3)
1|milk|transport ..6 °C (raw)
2|meat-fresh beef lamb pork veal|transport ..7 °C (red meat)
3|game-large|transport ..7 °C
4|poultry-fresh game-small|transport ..4 °C
5|offal-red|transport ..3 °C
6|meat-minced|transport ..2 °C (or as on the label or transport documents)
7|meat-products butter dairy-chilled produce-cut juice-concentrate|transport ..6 °C (or as on the label or transport documents)
8|milk|transport ..6 °C (pasteurized; or as on the label or transport documents)
9|fish-fresh|transport "temperature of melting ice" [untreated fish, molluscs, crustaceans]
§ table 0 to -10 °C (annex 2)
10|butter-frozen|transport ..-10 °C
@ atp-isotermic
§ list
1|milk|transport ..6 °C (raw)
2|meat-fresh beef lamb pork veal|transport ..7 °C (red meat)
3|poultry-fresh|transport ..4 °C
4|offal-red|transport ..3 °C
5|meat-minced|transport ..2 °C
@ atp-journal
§ Table 1
1|ice-cream|transport ..-20 °C
2|frozen-food|transport ..-18 °C
3|fish-frozen|transport ..-18 °C
4|frozen-food-other|transport ..-12 °C
5|butter-frozen|transport ..-10 °C
@ eu-summary-quick-frozen
§ Freezing process
1|frozen-food|storage ..-18 °C (quick-frozen)
2|frozen-food|deviation ..3 K (quick-frozen; deviation allowed in transport)
@ fsai-quick-frozen
§ definition
1|frozen-food|storage ..-18 °C (quick-frozen; at all points)
@ eu-2017-1981
§ recital
1|meat-fresh beef lamb pork veal|storage ..7 °C (domestic ungulates, other than offal; core)
@ vermont-frozen
§ transportation
1|frozen-food|transport ..0 °F (internal product, to be accepted for transportation)
§ warehouses
2|frozen-food|storage ..0 °F (storage room air)
@ maine-frozen
§ C
1|frozen-food|storage ..0 °F (air)
2|frozen-food|storage ..10 °F [internal product; during loading, defrost and the like]
@ arkansas-frozen
§ (a)
1|frozen-food|storage ..0 °F (warehouse)
2|frozen-food|storage -10 °F [warehouse, recommended]
@ northern-ireland-fish
§ para 1(a)
1|fish-fresh|transport "temperature approaching that of melting ice" [fresh or thawed; cooked and chilled crustaceans and molluscs]
§ para 1(b)
2|fish-frozen|transport ..-18 °C (in all parts of the product)
3|fish-frozen|deviation ..3 K (brief upward fluctuation allowed in transport)
`;
