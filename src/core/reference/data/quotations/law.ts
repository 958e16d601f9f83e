/** Sentences and table cells that values stand in, of texts of law and standards; numbered as in ../values/law.ts. */
export const law = `
@ 21-cfr-118.4
1|You must hold and transport eggs at or below 45 F ambient temperature beginning 36 hours after time of lay.
@ 9-cfr-590.50
1|stored and transported under refrigeration at an ambient temperature of no greater than 45 [deg]F (7.2 [deg]C)
@ 9-cfr-381.66
1|if such poultry is not immediately placed into a freezer after chilling and packaging, it shall be held at 36 [deg]F. or lower
2|bring the internal temperature of the birds at the center of the package to 0 [deg]F. or below within 72 hours
@ 63-fr-45663
1|stored and transported under refrigeration at an ambient temperature not to exceed 45 deg.F (7.2 deg.C)
@ 02-ncac-09o.0104
1|held or transported at a refrigerated ambient temperature of 45 degrees F. or lower without freezing
@ 21-cfr-1250.27
1|All perishable food or drink shall be kept at or below 50 [deg]F, except when being prepared or kept hot for serving.
@ delaware-food-code
1|shall be maintained: ... (2) At 5°C(41°F) or less.
2|stored in refrigerated EQUIPMENT that maintains an ambient air temperature of 7°C (45°F) or less
@ washington-food-code
1|POTENTIALLY HAZARDOUS FOOD must be maintained: ... (b) At 41°F (5°C) or less.
2|refrigerated EQUIPMENT that maintains an ambient air temperature of 45°F (7°C) or less
@ maine-food-code
1|Under refrigeration that maintains the Food temperature at 5ºC (41ºF) or less
2|Stored frozen Foods shall be maintained frozen.
@ 3-ccr-626
1|promptly cooled to 45 degrees F., or below, at the time of processing and shall be so maintained at all times
2|any container within the lot found to contain market milk of 50 degrees F., or over, shall be excluded
@ california-fac-35782
1|Market milk shall be cooled to 45 degrees Fahrenheit or below, whether it is raw or pasteurized
@ california-fac-35783
1|milk in transit on bulk milk tankers, shall not exceed 50 degrees Fahrenheit (10 degrees Celsius)
@ 77-iac-785.330
1|Raw milk in farm bulk tanks shall be cooled to 45º F or less within two hours after milking
@ atp-coch
1|Raw milk1.+6°C
2|Red meat2 and large game (other than red offal).+7°C
3|Red meat2 and large game (other than red offal).+7°C
4|Game (other than large game), poultry, rabbits+4°C
5|Red offal.+3°C
6|Minced meat.At + 2 °C or at the temperature indicated on the label and / or transport documentation.
7|At + 6 °C or at the temperature indicated on the label and / or transport documentation.
8|At + 6 °C or at the temperature indicated on the label and / or transport documentation.
9|On melting ice or at the temperature of melting ice.
10|Butter.-10°
@ atp-isotermic
1|Raw milk¹ +6°C
2|Red meat² and large game (other than red offal) +7°C
3|Game (other than large game), poultry² and rabbits + 4 °C
4|Red offal² +3°C
5|Minced meat² - Either at +2 °C or at temperature indicated on the label
@ atp-journal
1|Ice cream | − 20 °C
2|Frozen or quick (deep)-frozen fish ... and all other quick (deep)-frozen foodstuffs | − 18 °C
3|Frozen or quick (deep)-frozen fish, fish products, molluscs and crustaceans ... | − 18 °C
4|All other frozen foodstuffs (except butter) | − 12 °C
5|Butter | − 10 °C
@ eu-summary-quick-frozen
1|the product is then held (after thermal stabilisation) at a temperature of – 18 °C or lower
2|Deviations from the temperature of – 18 °C ... permitted during transport and local distribution ... must not exceed 3 °C.
@ fsai-quick-frozen
1|(after thermal stabilization) is continuously maintained at a level of -18 °C or lower at all points
@ eu-2017-1981
1|meat, other than offal, of domestic ungulates is to be immediately chilled ... to a core temperature of not more than 7 °C
@ vermont-frozen
1|Frozen food shipments shall not be accepted for transportation when the internal product temperature exceeds 0 [degrees] F.
2|Each storage room and part thereof shall be maintained at an air temperature of 0 [degrees] F., or lower.
@ maine-frozen
1|All frozen food shall be stored at an air temperature of 0E F or below except for defrost cycles, loading and unloading
2|at such times the internal product temperature shall not exceed 10E F
@ arkansas-frozen
1|All frozen food warehouses shall maintain a temperature of 0 degrees Fahrenheit or below in storage areas.
2|A temperature of -10 degrees Fahrenheit is recommended.
@ northern-ireland-fish
1|must be kept at a temperature approaching that of melting ice
2|must be kept at an even temperature of −18°C or less in all parts of the product, after temperature stabilisation
3|brief upward fluctuations of not more than 3°C, during transport
`;
