/** The usual precaution for each kind of work that can hurt, in one line. */
import type { CautionKind } from "../../build/cautions.ts";

export const PRECAUTIONS: { readonly [K in CautionKind]: string } = {
  "lifted vehicle":
    "stand it on rated stands on hard level ground, chock the wheels, push it hard before going under; never trust a jack alone",
  "spring under load":
    "a spring under load can maim: use compressors made for it, let it off slowly, and keep out of its line",
  "gas damper": "gas dampers and struts are under pressure for good: never heat, cut or drill them",
  fuel: "in the open or well aired, no flame, spark or hot lamp, battery off, extinguisher within reach, fuel into closed metal cans",
  "fuel tank and heat":
    "no hot work on anything that held fuel: its vapour explodes long after it was emptied, and a water fill is not enough; leave it to those equipped for it",
  "brake fluid":
    "goggles and gloves, paint covered, fluid from a sealed can only; what was bled is never used again",
  "brake pedal":
    "pump the pedal until it is hard after any work on pads, shoes or pistons; then try it standing, at walking pace, and further only then",
  "pistons and air":
    "push pistons out with fluid pressure, wrapped, fingers clear: compressed air shoots them out",
  "blasting media":
    "blasting media left in a bore, gallery or thread wrecks what it feeds: plug all openings before, flush and look through them after",
  "old coatings":
    "old coatings and plating can hold lead, cadmium and chromate: closed cabinet or air-fed mask, dust bagged and not swept",
  "friction dust":
    "old linings, clutches, gaskets and wraps may hold asbestos: never blow, brush dry or sand them; wet the dust, wipe it up and bag it",
  battery: "earth lead off first and on last, no sparks near its gas, goggles against its acid",
  "pressure test":
    "test with liquid, never with air, least of all tanks, calipers and old radiators; stand clear of fittings while under pressure",
  "hot coolant": "let it cool before the cap or a hose is touched: under pressure it scalds",
  "chlorinated cleaner":
    "chlorinated cleaner near an arc or flame turns into poisonous gas: dry and air the part fully before heat comes near",
  "burnt seals":
    "fluoroelastomer seals that have been burnt can carry acid that eats to the bone: do not touch without proper gloves",
  "paint mist":
    "two-pack paint gives off isocyanates: an air-fed mask, no one else in the air of it; a filter is not enough",
  "coated faces":
    "paint or powder under a clamped face creeps and loses preload: mask or clear every joint face",
  magnesium:
    "magnesium dust and swarf burn fiercely: keep them apart and dry, no water on a fire, dry sand or a class D extinguisher",
  "composite and heat":
    "heat ruins composite before it shows, and its smoke is toxic: keep heat and hot work away",
  "sodium valves":
    "exhaust valves may be filled with sodium, which burns with water: never cut, drill or melt one that may be",
  "exhaust gas": "exhaust gas kills without a smell: doors open, exhaust led outside, never alone",
  "first start":
    "first start with an extinguisher in reach and a second person at the master switch or fuel tap",
  "heated bearing":
    "a bearing is heated to 120 °C at most, a sealed one less, in an oven or on a plate, never with a flame; gloves",
  "structural repair":
    "welding, bending or plating of what steers, carries a wheel or holds a harness belongs to a qualified welder, with a crack test after",
  "plated fasteners":
    "plating can make hard fasteners brittle (hydrogen): from class 10.9 up ask the plater about baking, or buy them coated another way",
  "licensed work":
    "air-conditioning gas, LPG, extinguishers, pyrotechnics and high voltage are for a licensed practitioner",
  "dated equipment": "its date follows its maker's label and the rules of the event, whichever ends first",
};

/** Whom every caution gives way to. */
export const DEFERENCE = "the maker's manual, local rules and a licensed practitioner come first";
