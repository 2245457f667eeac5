/**
 * What both ends of a link know already, so that the link need not carry it: the fields and words of a job, the rarest first. Whatever
 * is like it costs a link next to nothing. It belongs to links of form 1, which are on paper: it is never edited. A better one is form 2.
 */
export const PRIMER_1 = [
  '"struck":false,"struck":true,"grainSize":7,{"unknown":{"source":"spark":{"analysis":{"C":0.4,"Mn":0.8,"Si":0.25,"Cr":0.95,"Mo":0.2,"V":0.1,"W":0.5,"Ni":',
  '"probes":[{"name":"core at ","x":"20 mm","r":"0 mm"}],"cool":" °C/h","even":false,{"do":"anneal","{"do":"stress-relieve","{"do":"run-colours","stop":" °C","in":"',
  '{"do":"warm-bath","in":"oil","with":{"across":"1-1/2 in","length":"12 in","at":"700 °C"}},"dish":{"across":"17 mm","depth":"6 mm"}},"bore":{"across":"10 mm","depth":"40 mm"}}',
  ',"tip":{"radius":"1 mm"}},{"shape":"hexagon","across":"{"shape":"octagon","across":"3/4 in"{"shape":"square","from":"{"shape":"square","across":"25 mm","length":"40 mm"',
  '"charcoal"},"muffle"},"torch"},"fast oil","slow oil","vegetable oil","brine","water","moving air","still air","depth":"agitation":"still"},"agitation":"mild"},"agitation":"strong"}',
  'hammer face edge point shank drift spring swell fuller flatter swage hot cold set bottom tool chisel punch "leaf',
  '"},"profile":[{"shape":"round","from":"10 mm","to":"25 mm","length":"5/16 in","to":"7/8 in","fillet":"1/4 in","length":"1-1/4 in","length":"1-3/8 in","across":"1/2 in',
  '{"piece":"',
  '","steel":{"grade":"1045"},"grade":"1084"},"grade":"1095"},"grade":"H13"},"grade":"W1"},"grade":"O1"},"grade":"S7"},"grade":"5160"},"grade":"4140"},',
  '"profile":[{"shape":"flat","from":"5 x 16 mm","to":"19 x 22 mm","length":"60 mm"},{"shape":"round","across":"22 mm","length":"110 mm","fillet":"3 mm"}],',
  '"zones":[{"name":"working end","from":"0 mm","to":"20 mm","aim":"at least 50 HRC"},{"name":"struck end","from":"150 mm","to":"170 mm","aim":"at most 45 HRC"},',
  '{"name":"face","from":"0 mm","to":"12 mm","aim":"48..54 HRC"}],"aim":"54..58 HRC"}],"shop":{"fires":[{"name":"coal fire","kind":"coal"},{"name":"gas forge","kind":"gas"}],',
  '"baths":[{"name":"oil drum","kind":"medium oil","volume":"20 L","depth":"300 mm","temperature":"50 °C"},{"name":"slack tub","kind":"water","volume":"60 L","depth":"400 mm",',
  '"temperature":"20 °C"}],"volume":"5 gal","temperature":"120 °F"}],"ovens":[{"name":"small oven","max":"450 °F","reads":"8 °C low","swing":"15 °C"}]},"max":"250 °C","reads":"true"',
  ',"process":[{"do":"normalise","in":"gas forge","to":"870 °C","hold":"12 min","times":2},{"do":"heat","in":"coal fire","to":"845 °C","hold":"10 min","part":{"from":"0 mm","to":"60 mm"}},',
  '{"do":"carry","for":"3 s"},{"do":"quench","in":"slack tub","depth":"whole","for":"90 s","agitation":"moderate"},{"do":"quench","in":"oil drum","depth":"whole","for":"4 min",',
  '"agitation":"moderate"},{"do":"temper","in":"small oven","at":"205 °C","hold":"1 h","times":1},{"do":"temper","in":"small oven","at":"450 °F","hold":"2 h","times":2}]}',
].join('')
