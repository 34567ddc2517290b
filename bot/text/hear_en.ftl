### What we understand in English. (What we say is in a catalogue of its own.)
###
### Fluent, like the spoken catalogue: one phrase a line under a key, and room for comments, which
### JSON does not have. Another language is one more file with the same keys, translated by meaning,
### not line by line. Nothing about English is written anywhere else.
###
### How to write a phrase
###   lower case, no accents, no apostrophes: "can't" is heard as "cant"
###   a|b        either word
###   word?      the word may be left out
###   ..         up to five words of any kind, never past the end of a sentence
###   ^  $       start and end of a clause (clauses end at punctuation and at "but")
###   <key>      any one word listed under that key
###   <n>        a number, in digits or words; <h> an hour, <m> minutes
###   a = b      under the keys "number" and "spell": a is heard as b
### Slips of the keyboard: two letters swapped (words of 4 letters or more), and one letter wrong,
### missing or too much (6 letters or more, first letter right), are put right by the program.
### Shorter words need their usual slips listed.
### When in doubt about pain, falls and signs, list the phrase: one question too many is the
### smallest of faults.

## Spelling

spell =
    i'll = i will
    we'll = we will
    ill do = i will do
    ill be = i will be
    ill try = i will try
    ill get = i will get
    ill skip = i will skip
    ill have = i will have
    w / o = without
    half a dozen = six
    half dozen = six
    backs gone|had|out|went|given|playing = back gone
    can t = cant
    don t = dont
    didn t = didnt
    doesn t = doesnt
    isn t = isnt
    wasn t = wasnt
    haven t = havent
    won t = wont
    couldn t = couldnt
    can not = cant
    cannot = cant
    cnt = cant
    carnt = cant
    unable to = cant
    not able to = cant
    couldnt = cant
    could not = cant
    did not = didnt
    did nt = didnt
    didn = didnt
    dident = didnt
    didint = didnt
    dint = didnt
    do not = dont
    dnt = dont
    does not = doesnt
    has not = hasnt
    have not = havent
    is not = isnt
    was not = wasnt
    will not = wont
    wanna = want to
    gonna = going to
    paine = pain
    oain = pain
    paim = pain
    paln = pain
    paun = pain
    paon = pain
    payn = pain
    pqin = pain
    pani = pain
    paiin = pain
    painn = pain
    painfull = painful
    hurst = hurts
    huts = hurts
    hirts = hurts
    hyrts = hurts
    jurts = hurts
    hurta = hurts
    hurtd = hurts
    hurtz = hurts
    hurs = hurts
    hrts = hurts
    hursts = hurts
    herts = hurts
    hirt = hurt
    hert = hurt
    hutr = hurt
    hyrt = hurt
    acks = aches
    akes = aches
    aks = aches
    akey = achy
    achey = achy
    akeing = aching
    acking = aching
    acheing = aching
    soar = sore
    sor = sore
    sorr = sore
    saw knee = sore knee
    fel = fell
    fal = fall
    faln = fallen
    ifell = i fell
    ihurt = i hurt
    felt over = fell over
    felt down = fell down
    feel over = fell over
    feel down the = fell down the
    feel down stairs = fell down stairs
    feel down yesterday = fell down yesterday
    feel off = fell off
    feel on my = fell on my
    feel in the kitchen|bathroom|shower|garden|street|hall|bath|bedroom = fell in the kitchen
    went down in|on the|my kitchen|bathroom|shower|garden|street|hall|bath|bedroom|stairs|ice|pavement = fell in the kitchen
    tript = tripped
    triped = tripped
    sliped = slipped
    slipt = slipped
    dizy = dizzy
    dizzie = dizzy
    diszy = dizzy
    dizzt = dizzy
    chst = chest
    cheat pain = chest pain
    chess pain = chest pain
    brethe = breathe
    breath properly = breathe
    cant breath = cant breathe
    to breath = to breathe
    breth = breath
    nee = knee
    kne = knee
    knne = knee
    kneee = knee
    bak = back
    hep = hip
    hipp = hip
    grion = groin
    thy = thigh
    thig = thigh
    kil = kill
    dye = die
    alot = a lot
    rep = reps
    jak = jacks
    jaks = jacks
    jacs = jacks
    jumos = jumps
    jups = jumps
    dun = done
    doen = done
    don = done
    donr = done
    dine them = done them
    di = did
    dod = did
    sid = did
    dud = did
    didd = did
    skp = skip
    skio = skip
    skipp = skip
    scip = skip
    ltr = later
    latr = later
    laters = later
    latter = later
    l 8 r = later
    l 8 ter = later
    layer = later
    lster = later
    minuts = minutes
    mintues = minutes
    minites = minutes
    yday = yesterday
    yest = yesterday
    yesterdays = yesterday
    evning = evening
    evenin = evening
    eve = evening
    afernoon = afternoon
    tonite = tonight
    2 nite = tonight
    2 night = tonight
    2 day = today
    tonigt = tonight
    hlep = help
    hepl = help
    halp = help
    plz = please
    pls = please
    eachside = each side
    perside = per side
    allof = all of
    alldone = all done
    undu = undo
    brk = break
    tho = though
    haf = half
    hlf = half
    ea = each
    em = them
    pulse = heart
    ticker = heart
    heartbeat = heart
    much better = better

# Words that look like a slip of a word below but are not.
innocent =
    acne azide bles bloor bream burbs bush bust calc clit clog coen coot deaf depay dims dines doma dome domes dons falk
    falla halt hofer hola hole holz kneed knew lager lake lane leake limo mich noob oudh paas pads paes paise pasa paws
    riba rigs robs rubs shih shim shims shine shon shun shuns sion sire sires slip slut sour spon spur stuff stunt thes
    thud ties timmy toed toll tors toss tows trio trop ttip tuan tull udine uribe voir waif welp
    leaving leaning leaping leasing cornwall instruction insure insured throws grins heartbreak
    outdone stubble tomorrows panning fainthearted leafing
    acme acre acres acting afternoons alto angel angle angles arching arise barley bather bathers
    beard beforehand begin being besides blaster bleeping blending bloodline bluster braise bread
    breakable breakdown breakthrough breather breathing breeding brother brothers bruises brunt
    burners burping burying camped camping camps casual causal caves champs cheat chess chests
    chocking chocolate clam clamped clamping clamps clocking clucking command commando compete
    competed concession concussions cooking crammed cramming crest cruise cutting dairy dial diary
    dizzying door dose downfall eighteenth eighth eightieth eights elevens eleventh eras evenings
    evidence evident exits failing fallacy fallback fallon fallout fats fatten feared feeling
    feelings felling fellow fellows fete fifteens fifteenth fifties fiftieth fight filled filling
    finished finishes flared flash flashed flasher flipped floated flowers flushes footfall form
    forties fortieth fourth freefall gaping grains grasping grinning groans halftime hallway hears
    heartfelt hearth height helpless homeless hospitals hunted hunting hunts hurled hurling
    hurried hurry hurtful hurtling infested inflate inflated injected jogged jogging joins joists
    jumping landfall latte leaded leading leaned leaped leased letter lien lifeblood light litter
    lumping midway might migraines mine minute monsoon moustache mustache mustaches nail nicety
    niches night nineteenth ninetieth odes outbreak overdoes overdone overpass paid pail painless
    paint painted painter painting paintings paints paired pairing pairs pan panache panned
    passage passive passport password passwords pats paused pin pincher pine pined pitched
    pitching plain plains planted popcorn pots punched punching quiet quite rainfall rams remained
    remains reminded reminder reminds salve seize seized seizures selfish selling seventeenth
    seventh seventieth shelled shipped shooter shortfall shouting sight silver singing sinning
    sipped sixteens sixteenth sixties sixtieth skimping skipper slapped slapping slave slipper
    slippers sliver smelled smelling snipped snowfall snowfalls spain spanning spelled spelling
    spilt splint split sprayed spring springs sprint stain stained stairs stamps stared started
    sting stings stinking stoke stoking stollen stomachs straight strains strait strand strike
    string stringing strings stripped strode strokes stroking stroll strove sucking sufferings
    suicides sundae sundry supported swallow swilling swinging tangle tangled teens tended tending
    tenner tens tension thirsty thirteenth thirties thirtieth thru tinder tinge tinkle tinkling
    tipped tipping tomatoes topped topple trail trapped trapping trial tried tripled tripling
    tumbler tumblers tuned twelfth twenties twentieth twine twinkle twisting unbeatable unhurt
    united untied vocation waists waterfall waterfalls weight wheeling whistling winder windfall
    winding winking winner winning yellow

## Numbers

# value in English; "?" marks a word that is often not a count ("that one hurts")
number =
    zero = 0
    one = 1?
    two = 2
    three = 3
    four = 4
    five = 5
    six = 6
    seven = 7
    eight = 8
    nine = 9
    ten = 10
    eleven = 11
    twelve = 12
    thirteen = 13
    fourteen = 14
    fifteen = 15
    sixteen = 16
    seventeen = 17
    eighteen = 18
    nineteen = 19
    twenty = 20
    thirty = 30
    forty = 40
    fifty = 50
    sixty = 60
    seventy = 70
    eighty = 80
    ninety = 90
    hundred = *100
    dozen = 12
    tree = 3?
    thre = 3
    fove = 5
    fiv = 5
    sevn = 7
    eigth = 8
    eigt = 8
    nien = 9
    elven = 11
    twelv = 12
    tweleve = 12
    tvelve = 12
    therteen = 13
    forteen = 14
    fourten = 14
    fiveteen = 15
    twentie = 20
    twenny = 20
    tweny = 20
    thity = 30
    therty = 30
    fourty = 40
    fivety = 50
    fiftie = 50
# "and" joins only after hundreds: "a hundred and ten"
number-and =
    and = 100

## Counting

# words that say a number was done
done =
    did do done made make managed completed complete finished got reached counted logged log
    count total totals totalled performed achieved after only
# what is counted
unit =
    reps rep repetitions repetition times time x jacks jack jumps jump stomps stomp drops drop
    hops hop raises raise lifts lift heel small gentle firm stepping jumping star
    exercises exercise marches march leg knee calf toe back prone upper ones
# words that may stand next to a count without changing it
plain =
    i ive im have has had we just so far now already today this that these morning afternoon
    evening noon lunch breakfast dinner of them those the my a an and & then in all about roughly
    approximately circa say ok okay yes yep yeah yup yea hi hello hey dear doc thanks thank you
    please for me it is was were with on at to well great good easy fine nice slow slowly slower
    fast again more extra another no problem problems pain yesterday last night as or bit still
    first second third bout bouts set round each per both side sides left right way every
    morn after before but though rest later tired here there too hard tough
    got done did do made managed completed finished only bot boutwise tonight one some
    went go gone felt feel feeling ish very really sorry oh ah um er hmm phew
    thats forgot tell say told finally meanwhile because when while myself hot weather tea tv news kitchen home house outside inside shoes
    carefully happily alone together proud skip skipped missed
    love darling hun pet sweetheart duck lol haha hahaha hehe lmao
# these near a number mean: ask before counting
doubt =
    will going tomorrow can could may should would want plan planning try trying if meant mean
    instead correction mistake wrong oops almost nearly under over less least up most below above
    around between maybe perhaps probably guess think unsure sure how many why what which few
    couple several either twice double triple sets not cant dont didnt havent wont never until
    change changed supposed shall must need needed goal target next monday tuesday wednesday
    thursday friday saturday sunday ago week weeks month year
# "one" after these is a pronoun
pointing =
    this that the last first next each every no any which another other a second third good bad
    hard easy my your than someone
# two counts: ask
count-range =
    <n> -|to|or|/|till|until <n>
    between <n> and|& <n>
    <n> - <n> - <n>
    <n> / <n> / <n>
    <n> x|times|sets? <n>
    <n> sets of|x? <n>
    <n> sets|rounds|goes
    <n> and|& a? half|quarter
    <n> k
    <n> o|l|i $
    half of|by <n>
    ^ for|to|by|of|from <n>
    to do|make|get|reach|manage|finish <n>
    <n> left|remaining|short $
    <n> left to do|go
    <n> more? to go|do
    missed|miss|skipped|lost|owe|short <n>
    <n> bouts|sets|rounds|goes|lots
    stopped|stop|quit|finished|ended|up|started|start|begin|began at|after|from|with <n>
    from <n> to|till|until <n>
    did|done|managed|made|only <n> minutes|min|mins|hours|seconds
    half a? <n>
# "12 of 20" is 12; "5 of 10" could be a pain score
count-of =
    <n> of the? <n>
    <n> out of the? <n>
plus =
    + plus
count-each =
    each|per|a|every|either side|leg|foot|way
    each|per|every|either the? side|leg|foot|way
    on? both sides|legs|feet
    each $
    both sides
    left and|& right
    right and|& left
# the same number for left and right is that number each side
count-left-right =
    <n> on? the? left and|&|,|then? <n> on? the? right
    <n> on? the? right and|&|,|then? <n> on? the? left
    <n> left <n> right
    <n> right <n> left
    <n> r|rt <n> l|lt
    <n> l|lt <n> r|rt
    left <n> and|&|,|then? right <n>
    right <n> and|&|,|then? left <n>
    left : <n> and|&|,|then? right : <n>
    <n> one side and|&|,|then? <n> the? other side?
# numbers that count something else
count-other =
    <n> years|yrs|year|yo|days|day|weeks|week|months|month|hours|hour|hrs|hr|minutes|min|mins|seconds|secs|sec old|ago
    <n> years|yrs|yr|days|day|weeks|week|wks|months|month|seconds|secs|sec|s
    for <n> minutes|mins|min|hours|hrs|hour
    <n> kg|kilos|lbs|pounds|mg|ml|km|miles|mile|metres|meters|m|cm|feet|ft|inches|degrees|pills|tablets|cups|glasses|stairs|stair|steps|flights|blocks|people|friends|grandchildren|grandkids|kids|children|percent|dollars|euros|am|pm
    <n> % 
    $|€|£|# <n>
    day|week|step|part|level|age|aged|room <n>
    <n> st|nd|rd|th
    one|<n> of us
    <n> knees|hips|shoulders|ankles|legs|calves|thighs|shins|toes|fingers|times a|per day|week
    <n> day|week|year|month old
    covid|b|vitamin|d - <n>
    vitamin b|d <n>
    covid|b <n>
# a number that says which one
count-label =
    bout|set|round|go|number|no|nr|exercise <n>
# some were done, how many is not said
count-vague =
    did|done|managed|made|only|just a? few|couple|some|several|most|part|handful
    a few $
    most of them|it
    almost|nearly all|done|half|everything|finished
    not all
    all but|except <n>|one|a|the
    not quite|even half|all|done
    not|didnt do? all
    did|done|managed none|nothing|zero
    ^ none $
    both done
    did|done|finished both
    less than half
    more than half
    half ?way
    halfway
    over half
# a bare yes: asked, unless "all" or "half" is said beside it
count-yes =
    ^ yes|yep|yeah|yup|y|yea|ye|yess|aye $
count-all =
    all
    all of? them|it
    all done
    done
    dones
    did all|it|them|those|everything|mine|my
    done all|it|them
    finished
    completed
    complete
    every one
    everything
    the whole? lot
    full set
    did the full|whole bout|set|amount|thing
    ✅
    ✔
    ☑
count-half =
    half
not-all =
    all good|right|ok|fine|well|day|the|over|set|best|my|week|night|morning|afternoon|evening|i|you|together|too|sudden|about|a
    at all
    after all
    of all
    first of all
    above all
    half past|an|a|hour|dozen|asleep|four|five|six|seven|eight|nine|ten|eleven|twelve|one|two|three
    half of? my
    in half
    well done
    have|get|got|gets? it? done later
    over and done
    done in|for|with
    all about
    all this
not-done =
    not|havent|hasnt|isnt|wasnt|didnt|never done|finished|completed|complete|do|did|get|manage|all
    not|havent|hasnt|isnt|wasnt|didnt yet|been|got|it|them|have done|finished|completed
    will be|get|have? it|them? done|finished
    be|get done|finished

## Days

yesterday =
    yesterday
    last night|evening
    the? day before
    night before
    ytd
other-day =
    day before yesterday
    monday|tuesday|wednesday|thursday|friday|saturday|sunday
    mon|tue|tues|wed|thu|thur|thurs|fri|sat
    <n> days|weeks ago
    a|couple|few days|week ago
    last week|weekend|time|month
    this|all|whole week
tomorrow =
    tomorrow
    tmrw
    tmr
    tomorow
    tommorow
    tommorrow
    next day|week|time
    another day
weekday-0 =
    monday mon mondays mo
weekday-1 =
    tuesday tue tues tuesdays tu
weekday-2 =
    wednesday wed weds wednesdays we
weekday-3 =
    thursday thu thur thurs thursdays th
weekday-4 =
    friday fri fridays fr
weekday-5 =
    saturday sat saturdays sa
weekday-6 =
    sunday sun sundays su
day-flexible =
    flexible flex any anyday whichever whenever none varies
day-today =
    today now
day-tomorrow =
    tomorrow tmrw tomorow tommorow tommorrow
day-every =
    daily everyday day days
day-joiner =
    and & or plus on every of the
month-1 =
    january jan
month-2 =
    february feb
month-3 =
    march mar
month-4 =
    april apr
month-5 =
    may
month-6 =
    june jun
month-7 =
    july jul
month-8 =
    august aug
month-9 =
    september sep sept
month-10 =
    october oct
month-11 =
    november nov
month-12 =
    december dec

## Short answers

# How a break is told: why, from when, how long, and that it is over.
away-travel =
    travel travelling traveling trip holiday holidays vacation hols cruise tour away abroad
away-illness =
    ill illness sick unwell poorly flu cold covid fever bug virus temperature infection
away-day =
    day days
away-week =
    week weeks
away-fortnight =
    fortnight fortnights
away-weekend =
    weekend
away-one =
    a one
away-two =
    couple
away-some =
    few couple several
away-until =
    until till til through thru
away-from =
    from starting beginning
# "back on Monday": the day after the last one
away-return =
    back home return returning
away-span =
    to - & and
away-later =
    next later soon following
# what it follows has been already: "ill since Monday", "been away for 3 days"
away-past =
    since ago been already last was were
away-in =
    in of during early late mid
away-of =
    of
away-the =
    the
away-ordinal =
    st nd rd th
# between "until" and the day
away-skip =
    on by the again this coming at
# names of days only where a word leads up to them: "till Sun", not "in the sun"
away-doubt =
    sat sun
away-no-day =
    mo tu we th fr sa su
away-unsure =
    unsure sure know idea
break-over =
    ^ im|am back $
    ^ i am back again? now? $
    ^ back again|now? $
    ^ i? im? am? back home? from my|the|our? holiday|holidays|hols|vacation|trip|travels|travelling|cruise|tour
    end|ended|stop|over my|the? break
    break is|its over|done|finished
break-none =
    no|without break|pause|holiday
    dont|not need|want|like|fancy|take a|any|the|my|this|another? break|pause|holiday|rest
    ^ cancel|cancelled|forget my|the|our|this? break|pause|holiday|holidays|trip|vacation
    not|wont going|go|be away
    break|holiday|trip is|was? cancelled|off
# Companion exercises by name, and what is counted of them.
companion-back-raise =
    upper? back raise|raises|raising|lift|lifts
    prone raise|raises|lift|lifts
companion-hover-hold =
    hover|hovers hold|holds?
    hovering
companion-round =
    round rounds set sets
companion-second =
    s sec secs second seconds
companion-rep =
    rep reps time times x
companion-link =
    of the my a an : - , .
companion-none =
    no not none nothing didnt skip skipped
# Leaving for good. It only ever leads to a question.
leave =
    want|wish|need|like|going|decided to leave|quit $
    want|wish|need|like to leave|quit the|this program|programme|service|bot|chat|study|practice|group|now
    leave|quit the|this program|programme|service|bot|practice
    leave|stop|quit|leaving|stopping for good
    stop forever
    i want out $
    ^ unsubscribe
    unsubscribe me
    sign|take me off|out $
    delete|erase|remove all? my data|account|record|records|details|information
    delete|erase me $
    close my account|record|file
    i quit $
not-leave =
    dont|not|never want|wish|like|going? to? leave|quit
    how|can|could do? i? leave|quit
# The two trials of a step test. A trial without a time: balance lost, a marker touched, a wrong order.
step-void =
    void|voids|invalid
    no|without a? time
    no good
    i? lost|lose|losing my? balance|footing
    balance lost|gone
    out of order
    i? did|got|had? the|it? wrong order|way|squares|square
    i? mixed|muddled up? the? order|squares
    order was? wrong
    i? touched|kicked|hit|trod|stepped|moved|knocked on? the|a? stick|sticks|cane|canes|tape|marker|markers|cross|line|lines
step-both =
    both two
step-first =
    first 1st
step-second =
    second 2nd
# Letters right after 1 or 2 that make it the first or the second.
step-ordinal =
    st nd
step-point =
    point dot
step-filler =
    one trial try test go run time times time was is it then and the my a s sec secs seconds i got took in were
answer-yes =
    yes y yep yeah yup yea yess ye ok okay sure correct right true please do 👍 ✅ ✔
answer-no =
    no n nope nah never not dont incorrect wrong false 👎 ❌
# what may stand beside a "no" and leaves it one; with anything else it is unclear
answer-filler =
    thanks
    thank you
    please|dear|doctor|doc
    today
    so far
    at all
    yet
    oh|well|ah|um|er|sorry
    definitely|absolutely|certainly
    of course
    none|nothing|neither|not of|like|any? of? these|this|that|them|those|those
    i|it dont|didnt|havent|doesnt|isnt|wasnt $
    i am|do|have|did not $
    im not $
    thankfully|luckily
answer-none =
    none no nothing nil never open - 0 without

## Hours in a short answer: "from 9 to 5", "8 in the morning to 8 at night". One thing a line.

hours-article =
    at
hours-unit =
    oclock
    o'clock
    h
hours-from =
    from
hours-to =
    to
    until
    till
hours-between =
    between
hours-and =
    and
# the words after an hour that are minutes of it
hours-past =
    thirty = 30
    fifteen = 15
hours-am =
    in the morning
hours-pm =
    in the afternoon
    in the evening
hours-night =
    at night

## Times

# "at 4": read as the first of the two that lies from 6:00 to 21:59, so 4 is 16:00 and 9 is 09:00
clock-plain =
    at|@ <h>
    at about|around|roughly <h>
    <h> oclock
    <h> o clock
    at <h> sharp
# these can also be about a count ("pain after 10"): a time only where nothing was done or hurts
clock-weak =
    after|until|till|til|from <h>
    not before <h>
    busy till|until|til <h>
    by <h>
# no times: what was reached or how long it took
clock-not =
    stopped|stop|quit|finished|ended|up|started|start at|after <h>
    did|done|managed|made|only <n> minutes|min|mins|hours|seconds
# two times: asked back
clock-range =
    at <h> or|-|and|/ at? <h>
    <h> or|to|- <h> am|pm|oclock
clock-exact =
    at|@|after|until|till|til|from|around|about|by <h> :|. <m>
    <h> :|. <m> oclock
    later|remind .. <h> :|. <m>
# the same without a word before it counts as a time only with am or pm
clock-bare =
    <h> :|. <m>
    <h>
clock-half =
    at? half past <h>
    at? half <h>
clock-quarter =
    at? quarter past|after <h>
    at? a quarter past|after <h>
clock-less-quarter =
    at? a? quarter to|of|before|til <h>
clock-past =
    at? <m> past <h>
    at? <m> minutes|min|mins past <h>
clock-to =
    at <m> to <h>
    <m> minutes|min|mins to <h>
clock-am-mark =
    am
    a . m
clock-pm-mark =
    pm
    p . m
# these only after a clock phrase: "did 10 in the morning" is a count
clock-am =
    in the morning
    this morning
clock-pm =
    in the afternoon|evening
    this afternoon|evening
    at night
    tonight
# phrases for a time of day; the key is the time
at-0900 =
    after|post breakfast|brekkie
at-1100 =
    later this morning
    mid morning
    after coffee
at-1130 =
    before lunch
at-1200 =
    at|around noon|midday
    noon
    midday
    12 noon
at-1300 =
    at lunch
    lunch time
    lunchtime
    after noon
    after midday
at-1330 =
    after lunch
at-1500 =
    this|in? the? afternoon
    later this? afternoon
    after my? nap
at-1730 =
    after work
    before dinner|supper|tea
at-1800 =
    this|in? the? evening
    later this? evening
at-1900 =
    after dinner|supper|tea
    tonight
    later tonight
at-2100 =
    before bed
    bed time
    bedtime
span-minutes =
    in about? <n> minutes|minute|min|mins|m
    in <n> $
    in about? <n> more minutes|minute|min|mins
    give me <n> more? minutes|minute|min|mins
span-hours =
    in about? <n> hours|hour|hrs|hr|h
    give me <n> hours|hour|hrs|hr
    one hour later
# without "in": a wait only where nothing was done
span-bare-minutes =
    <n> more? minutes|minute|min|mins later?
span-bare-hours =
    <n> more? hours|hour|hrs|hr later?
span-15 =
    in? a? quarter of? an? hour
    quarter of an hour
span-30 =
    in? about? half an? hour later?
    in? about? half hour later?
    in a half hour
    give me half an hour
span-60 =
    in about? an|a hour
    an hour later
    give me an hour
    ^ an hour $
span-90 =
    in? an|a|one hour and a half
    in? one and a half hours
    in? <n> and a half hours

## Commands

skip =
    skip
    skipping
    skipped
    pass
    leave it|this
    no thanks
    no thank you
    not this one|time
    not today
    cant today
    cant do? it|this|that|them|these today?
    wont do it|this|them|today
    not doing it|this|them
    give it|this a miss
    ⏭
    cant be bothered|arsed|fussed|asked
    ^ no time
    no time today|now|for|to|this|right
    not doing any
later =
    later
    not right? now
    in a? couple|few of? hours|minutes|mins
    after my|the|i
    when i get|am|have|finish|come
    next time
    not yet
    not|havent|didnt done|do|did it|them? yet
    cant now
    cant right now
    cant at the moment
    in a|one bit|while|minute|moment|mo|sec|second|tick|jiffy
    bit later
    remind me
    snooze
    postpone
    delay
    wait
    busy
    not at home
    hang on
    hold on
    soon
    ⏰
undo =
    undo
    undo that|it
    take that|it back
    cancel that|last|it
    delete that|last|it
    remove that|last|it
    scratch that
    that was a mistake
    that was wrong
    i made a mistake
    wrong number
    ↩
    take them|those|that|it|these off|out|away
    scrap|ignore|disregard that|those|last|it
break =
    break
    pause
    time off
    day|days off
    week|weeks off
    out of town
    out of the country
    holiday|holidays|vacation|hols
    travelling
    traveling
    going away
    ^ away
    i|im|am|be|are|were|being|gone away
    away|off until|till|til|for|from|next|this|tomorrow|over
    away <n> day|days|week|weeks
    away a|one|the|two week|weeks|fortnight|few|couple|weekend
    on a? trip|cruise|tour
    back|home again? on|by? the? <n> st|nd|rd|th
    back|home again? on|by? monday|tuesday|wednesday|thursday|friday|saturday|sunday
    i|im|am|was|been|be|feel|feeling|felt|got|getting|being|fell so|very|really|still|quite|rather|too? ill|sick|unwell|poorly
    still|very|really|too ill|sick|unwell
    ^ ill|sick|unwell|poorly $
    ^ ill|sick|unwell|poorly until|till|til|for|since|today|tomorrow|again|with|in|at|and|this|from|all
    off sick|ill
    have|got|caught|with a|the|bad? flu|cold|covid|fever|bug|virus
    have|got|running|run a high? temperature|fever
    flu|covid|fever
    ^ from monday|tuesday|wednesday|thursday|friday|saturday|sunday|today|tomorrow until|till|til|to|for
    ^ for? a fortnight $
    ^ for? <n> day|days|week|weeks|fortnights $
    ^ for? a|one week $
    ^ stop please? $
    please stop
    stop for|the|these|all|sending|messages|messaging|prompts
    off to .. until|till|til
not-break =
    coffee|lunch|tea|after|without|no|quick|short|little|dinner|during|before|since|at|work|school|spring break
    after|during|before|since|in|at|over my|the|a|our? break|holiday|holidays|vacation|hols|lunch|pause
    on my lunch|tea|coffee|dinner? break
    dont|not|wont|never need|want|like|fancy|take|have|having|get a|any|the|my|this|another? break|pause|holiday|rest
    not|wasnt|isnt on a|my|any|the? break|holiday|vacation
    no break|pause|holiday|holidays
    no|without need for|of a? break|pause
    cancel|cancelled|forget my|the|our|this? break|pause|holiday|holidays|trip|vacation
    break|holiday|trip is|was? cancelled
    give|gave me|us|it|him|her a? break
    break a|the sweat|record
    break for lunch|tea|dinner|coffee|breakfast
    break up|down|into|out|even|open|free
    break in my|the|new
    not|isnt|wasnt|never ill|sick|unwell|poorly
    dont feel|am so|very|that? ill|sick|unwell|poorly
    not|wont going|go|be away
    sick of
help =
    help
    help me $
    what can|do|should i do|say|write|send|type
    dont|not understand|get|understanding
    how does|do it work
    how does|do this|it|i
    commands
    menu
    instructions
    / help
    ^ info $

how-to =
    ^ how $
    how do|should|can|would|shall i|you|we|one do .. $
    how is|are it|this|they|these|that done
    how does it|this|that go
    how it is|s done
    ^ how to $
    how to do .. $
    ^ show me $
    ^ show me how|it|again|please|the .. $
    show me how $
    show me how to do|start
    show me how it|they|this|that is|are|goes|go|done|works|work
    show me how i|we|you do|should|can|have
    ^ show $
    remind me how
    dont|not know|remember|recall how $
    dont|not know|remember|recall how to do|start
    dont|not know|remember|recall how to? it|they|this|that is|are|goes|go|done|works|work
    dont|not know|remember|recall how i|we|you do|should|can|have
    forgot|forgotten how $
    forgot|forgotten how to do|start
    forgot|forgotten how it|they|this|that is|are|goes|go|done|works|work
    forgot|forgotten how i|we|you do|should|can|have
    what does it|this|that look like
    ^ a|the? picture|drawing|photo please? $
    see the picture|drawing

## Pain

# body parts
part =
    head neck shoulder shoulders arm arms elbow elbows wrist wrists hand hands finger fingers
    thumb thumbs chest rib ribs back spine hip hips groin thigh thighs leg legs knee knees shin
    shins calf calves ankle ankles foot feet heel heels toe toes tummy stomach belly bum buttock
    buttocks bottom pelvis jaw tooth teeth throat ear ears eye eyes muscle muscles joint joints
    lower upper left right body tailbone hamstring hamstrings quad quads abdomen side sides low
# soreness: logged; still a mention of pain
sore =
    sore soreness sores doms
# every single word that mentions pain
ache =
    pain pains painful painfully paining pained hurt hurts hurting hurted ache aches ached aching
    achy sore soreness sores doms ouch ouchie ow owie oww oof yeowch agony agonising agonizing
    throb throbs throbbing throbbed stabbing burning burns cramp cramps cramping cramped tender
    tenderness twinge twinges twinged spasm spasms spasming pinched pinching injured injury injure
    swollen swelling swelled stiff stiffness stiffer numb numbness tingle tingling tingly discomfort
    uncomfortable uncomfy headache headaches backache backaches toothache stomachache bellyache migraine
    sprain sprained sprains strained strain bruise bruised bruises bruising bleeding bled blood
    fracture fractured fractures fracturing broken excruciating unbearable sciatica inflamed inflammation
    dislocated limping limp shooting sharp stinging stings stung hospital ambulance hobbling
    niggle niggles niggly niggling nagging bother bothers bothering bothersome
    gammy dodgy gyp jarred winded puffed infected blistered rash
    wince winced wincing aggravated flared 🤕 🩹 🚑 🩸
# verbs among them and among the falls: "no hurts" is not a denial, "no pain" is
verb =
    hurt hurts hurting hurted aching ached throbs burns fell tripped slipped stumbled fallen
    collapsed tumbled swollen injured broken sprained
pain =
    <ache>
    killing me
    kills me
    kills when|if|to
    is|are kills|killing
    <part> kills|killing
    <part> is|are|was|feels|felt|feel|keeps? very|really|so|a|bit|quite|still|getting? bad|worse|awful|terrible|horrible|out|funny|wrong|off|tight|weak
    but my|the <part>
    <part> bad|worse|awful|terrible|horrible|trouble|problem|problems|issue|issues|tight
    <part> is|are|keeps|been? playing|acting|giving up|out|me
    <part> just|has? gave|gives|giving|going|went way|out|again
    back just? went $
    <part> popped|clicked|cracked|snapped|locked|locking|buckled|seized|went|gone
    <part> is|feels|felt? not|isnt|wasnt happy|good|great|right|okay|ok
    bad <part>
    trouble|problem|problems|bother with|in|from my? <part>
    put|threw|pulled|twisted|rolled|turned|jarred|wrenched|tweaked|strained|done|did|broke|break|cracked my? left|right? <part> in|out?
    pulled|pulling a? muscle|something
    broke|break a|my|something <part>|bone?
    bone|bones break|breaks|broke|broken|breaking|cracked
    broke|break|breaking|breaks|cracked a|any|some|my|the|two|three? bone|bones
    hairline|stress|hip|wrist|ankle|spine|rib|old|bad|compression break|breaks
    break|breaks in|of|to|at|on my|the|a left|right? <part>|bone
    had|have|got a break in|of|at
    heard|felt a|something pop|crack|snap|pull|tear|give|go
    something popped|cracked|snapped|tore|went|pulled|gave
    pins and needles
    cant bend|lift|move|turn|feel|use my? <part>
    out of breath
    catch my breath
    feel|feels|felt something wrong
    something|somethings is? wrong|not right
    doesnt|dont feel right
    had to stop
    stubbed|cut|grazed|scraped|jarred|jammed|burned|burnt|scalded|bashed|banged|bumped|knocked|scratched|torn|tore my|a
    couldnt|cant finish|carry|go|continue
    too much for my
    <part> bother|bothers|bothering|troubling|niggling|complaining|grumbling|protesting|screaming|nagging
    flare|flared up
    flareup
    <part> has|have|is|been? gone again|out|funny?
    like a knife
    giving|gives me hell|trouble|bother
    something in|down|up my|the <part>
    seized up?
    pulled up lame
    lame
    a stitch
    cant get comfy|comfortable
    it pulls|pulled|pinches|catches|jars|jolts|nips|grinds|clicks|aggravates
    tweaked|jolted|jarred|strained|pulled|overdid|overdone it?
    feel|feels raw|off|weird|funny|odd
    in bits|pieces
    black and blue
    on fire
    cant bend|lift|straighten|stretch|reach
    bunion|bunions|corn|ulcer
    electric shock|shocks
    clicking|grinding|crunching|catching
    blister|blisters
    feel|feeling|felt|im|am awful|terrible|dreadful|rough
    not feeling|feel well|right
    made|making|makes it|my worse .. <part>
    getting worse
    got worse
    worse than before|usual|yesterday
    urgent care
    emergency room
    a & e
    heart hurts
    suffering
    in a bad way
    poorly <part>
    gave way
    giving way
    giving me gyp|grief|jip|gip
    legs? feel|feels|felt|are|is|gone weak|wobbly|jelly|heavy
    arthritis|osteoarthritis|rheumatism|rheumatics|gout|tendonitis|tendinitis .. bad|playing|flaring|flared|flare|terrible|acting|awful|dreadful|worse|me
    flaring up
    heel|heels|foot|feet|leg|legs|arm|arms|hand|hands|eye|eyes|ear|ears|finger|fingers|thumb|thumbs feel|feels|felt|feeling|keeps|keep|gone|went
    heel|heels|foot|feet|leg|legs|arm|arms|hand|hands|eye|eyes|ear|ears|finger|fingers|thumb|thumbs is|are|was|were|its like|full
    heard|hear|felt|feel .. heel|heels|foot|feet|leg|legs|arm|arms|hand|hands|finger|fingers|thumb
    walk|walking like a|an old? duck|crab|drunk|penguin|robot|woman|man|cripple|pensioner
    walk|walking funny|oddly|badly|sideways|bent
calm-pain =
    pain free
    free of|from pain
    no pain no gain
    pain no|none|nil $
    burning calories|fat|off
    blood pressure|test|tests|sugar|thinner|thinners|work
    sharp at|on
    at? <h> sharp
    on the sharp
    look sharp
    stiff drink|upper
    broken record|english
    burns calories|fat|off
    no blood
    without hurting
    no broken bones?
    shooting stars?|guard
    stay sharp
    feel the burn
    not getting worse
    break a record|sweat
    <part> good|right side
    legal tender
    numb to
    back is good|ok|okay|right|fine
    back okay|ok|right|good
    side is? good|ok|okay|right
    hand is? ok
    hurt no? one
    kills|killing|kill me? to? wait|waiting
    waiting|wait is|its? killing|kills me
    son|daughter|husband|wife|dog|cat|traffic|weather|phone|bus|neighbour|neighbor|kids|grandson|granddaughter|parking|internet|computer is|was|are|being|such a? right|real|such? pain
    heel|heels|foot|feet|leg|legs|arm|arms|hand|hands|eye|eyes|ear|ears|finger|fingers|thumb|thumbs feel|feels|felt|feeling|keeps|keep|went .. <well>|lighter|easier|looser|freer|stronger|warm
    feel|felt .. heel|heels|foot|feet|leg|legs|arm|arms|hand|hands|finger|fingers|thumb .. <well>|lighter|easier|looser|freer|stronger|working

## Falls

fall =
    fall
    falls
    fell
    fallen
    falling
    tripped
    tripping
    slipped
    slipping
    stumbled
    stumble
    stumbling
    stumbles
    tumbles
    trip
    knocked|bowled|pushed over|down|off
    went|go|gone over on
    fall over
    tumbled
    tumble
    toppled
    keeled over
    went|gone down hard|heavily|flat|on|like|onto
    went flying|sprawling|headlong
    face planted
    faceplanted
    hit the floor|ground|deck|pavement
    landed|ended|finished up? on my|the? hard? bum|bottom|back|side|knee|knees|floor|hip|face|hands|hand|ground|backside|arm|wrist|elbow|shoulder
    ended up on the floor|ground
    dropped to the floor|ground
    pick|picked|lift|lifted|haul|hauled me up? off|from the floor|ground
    lost my? balance|footing
    missed|miss a|the|my last|bottom|top? step|stair
    nearly|almost went|going over|down
    slid off|out|down|from
    came|come a cropper
    came|come|thrown|knocked off my|the bike|horse|chair|step|stool|ladder|trike|scooter|bicycle|kerb|curb
    in a heap
    pulled|dragged me? over|down
    and went down
    took|taken a header|nosedive|knock|purler
    arse|base over tit|apex|elbow
    cant reach the|my phone
    legs gave|went way|out|from|under
    knee|knees|leg|hip|ankle gave|gives|buckled|buckles way|out|under?
    took a tumble|spill|fall|dive|knock
    down the stairs|steps
    collapsed
    went|gone over in|on|outside|backwards|backward|sideways|forwards|forward|again|this|today|yesterday|while|when|and
    ^ i? just? went over $
    head|arm|hip|wrist|knee|back .. when|as i? went down
    as|when i went down $|and|like|hard|heavily|i
    measured my length
    kissed|ate|hugged the? floor|ground|pavement|dirt|carpet
    dog|bus|train|car|bike|child|kid|grandson|granddaughter|wind|door pulled|knocked|bowled|pushed|threw|tipped|dragged|blew|sent me
    head over heels
    down i went
    over i went
    went a? over tit|tip|end
    flat on my face|back
calm-fall =
    fell|fall|falling|fallen|falls fast|sound|back|half? asleep
    fall|falls|fell|falling|fallen in love
    fell|fall|falling|falls apart|through|short|silent|flat|ill|sick|pregnant|foul|into place|place
    fallen leaves|leaf|angel
    falling leaves
    leaves|rain|snow|temperature|temperatures|prices|price|night|darkness|phone|cup|glass|book|plate|vase|picture|pressure|cat is|are|has|have|was|were|just|keeps? fell|fall|falls|falling|fallen
    fall|falls on a? monday|tuesday|wednesday|thursday|friday|saturday|sunday
    fall weather|colors|colours|season|leaves|term|semester|break|cleaning|clean|class
    this|every|next|early|late fall $
    fell out|off with|the wagon|my radar
    falls prevention|class|clinic|group|program|programme
    fall prevention|risk|class|clinic
    slipped my mind|up
    it slipped my? mind
    slipped on my shoes|slippers|coat|jacket|shirt
    slipped into
    tripping over my words
    stumbled upon|across
    fall back on
    niagara falls
    tumble dryer|drier
    fall out with
    fall in line
    on|road|day|long|business|bus|boat|coach|shopping|city|my|our|this|the|nice|good|great|next|weekend|train|plane|return|round trip
    trip to|with|away
    went|gone over .. to my|the|a|see|visit|town|church|his|her|their
    went|gone over in|on the|a train|bus|ferry|boat|car|plane
    fell|fall|falling|fallen behind with|on|in|schedule
    head over heels in love|about|with

## Warning signs. The words are gathered from ordinary speech (ours).

weak =
    weak weakness numb numbness tingling tingly dead floppy limp paralysed paralyzed drooping droopy
    droops drooped
    useless
# how a heart goes that does not go as it should
beating =
    racing pounding fluttering flutters flutter thumping jumping skipping skips skipped fast raced hammering irregular
    clappers mad crazy wild wildly bonkers banging thudding galloping flipping flopping missing uneven erratic irregularly
    jumpy quickly beats settle bursting
breathe =
    breathe breathing breath breaths
sign-chest =
    chest .. <ache>
    <ache> .. chest
    chest .. tight|tightness|tightening|pressure|heavy|heaviness|squeezing|squeezed|crushing|weight|discomfort|bad|funny|elephant|vice|band|brick|squeeze
    tight|tightness|pressure|heaviness|squeezing|crushing|weight|tightening .. chest
    heart attack
    angina
    heart .. <ache>
    <ache> .. my heart
    <ache> .. down|in my? left arm
    <ache> .. arm and jaw
    <ache> .. jaw and arm
    <ache> .. spreading|spreads|into .. arm|jaw
    elephant on my chest
    elephant|vice|band|brick|weight|ton|belt|anvil .. chest
    chest .. odd|strange|weird|peculiar|queer|uncomfortable|uneasy
sign-faint =
    faint
    fainted
    fainting
    fainty
    feinted
    feint
    passed|passing|pass out
    past out
    blacked|blacking|black out
    blackout
    blackouts
    everything|room|vision went black|dark
    lost|lose|losing consciousness
    unconscious
    collapsed
    collapse
    keeled over
    came|come|woke round|around|to|up on the floor
calm-faint =
    faint|faintest <ache>|idea|smell|hearted|hope|praise
    not the faintest
    black out curtains|blinds
    blackout curtains|blinds
    passed|pass out? leaflets|flyers
sign-breath =
    cant|hard|harder|trouble|difficult|difficulty|struggle|struggling|struggled|hardly|barely|unable|difficulties .. breathe|breathing
    cant|hardly|barely|trouble|struggling .. get|catch|catching|getting my|any|enough|a? breath|air
    cant get|catch my|any|enough|a? breath|air
    breathless
    breathlessness
    short|shortness of breath
    short of? breath
    breath is? short
    breathing is? hard|difficult|bad|badly|funny|heavy|laboured|labored
    gasping
    wheezing
    wheezy
    suffocating
    struggling|fighting|gasping for breath|air
    catching|catch|caught my breath .. cant|trouble|hard
    no air
    cant get air
# a part of the body that is spoken of is a mention of pain, unless all is said to be well with it
# or the clause is a plain count
limb =
    knee knees hip hips ankle ankles groin thigh thighs shin shins calf calves shoulder shoulders
    elbow elbows wrist wrists neck spine rib ribs toe toes tailbone buttock buttocks achilles chest
    jaw pelvis hamstring hamstrings tummy stomach muscle muscles joint joints
body =
    <limb>
    my left|right|lower|upper|poor|other|whole? <part>
    left|right|lower foot|leg|hip|back|hand|arm
calm-body =
    <part> raise|raises|lift|lifts|drop|drops|press|presses|exercise|exercises|circle|circles|hold
    my back $
    hands and knees
    my own? side
    keep|kept|keeping|bend|bent|bending|straighten my <part>
    my back to|yard|garden|door|porch
    my left|right side?
    my hand|hands on|in|full
    in|off|over my head
    chest of
    hip hip
well =
    good fine ok okay great better strong stronger well happy loose comfortable fantastic
    nice normal brilliant lovely problem problems issue issues

sign-one-side-weak =
    one side .. <weak>
    left|right side .. <weak>
    <weak> .. one side
    <weak> .. down|on|in my? left|right side
    left|right|one arm|leg|hand .. <weak>
    <weak> .. left|right|one arm|leg|hand
    arm .. gone|is|went|feels? <weak>
    cant move|lift|feel|raise|use my? left|right|one arm|leg|hand|side|foot
    cant move|feel half|side|one .. body
    no feeling in|on|down my? left|right|one arm|leg|hand|side|foot?
    arm|hand|leg wont|doesnt move|work|lift|respond
    stroke
    strokes
    a stroke
    arm|hand|leg wont|doesnt|isnt|not do|doing|obey|obeying|listen|answer
    left|right arm|leg|hand .. heavy
calm-one-side-weak =
    stroke of luck
    heat|back|breast|key|swim|swimming|paint stroke|strokes
    stroke|stroked the? cat|dog
sign-head-knock =
    hit|hits|banged|bang|bumped|bump|bumping|knocked|knock|cracked|smacked|whacked|bashed|struck|hurt|landed|clonked|thumped|split|cut|bonked|injured .. head
    head hit|hits|struck|bounced
    head .. hit|against the? floor|wall|ground|table|edge|bath|door|sink|step|stairs|corner|pavement
    head injury|wound
    bump|lump|cut|knock|bang|blow on|to the|my head
    concussion
    concussed
    blood .. head
    head .. bleeding|blood
calm-head-knock =
    nail on the head
    hit .. heads? up
    head start
sign-no-weight =
    cant|hardly|barely put|bear|take any|my|much|weight|full? weight? on?
    cant put .. weight|pressure .. leg|foot|hip|ankle|knee|it
    cant stand on
    cant stand $
    cant stand .. leg|foot|hip|ankle|knee
    cant walk
    cant weight bear
    cant bear weight
    hardly|barely walk|stand
    leg|legs|hip|knee|ankle|foot wont|cant|doesnt|will not? hold|take|support|carry|bear me|my|weight|it
    no weight on
    leg .. looks|is shorter|twisted|crooked
    too painful|sore to walk|stand
    fell|fallen|fall|slipped|tripped|tumbled .. cant stand
    cant stand and|now|please|help|any|properly|anymore|by|without|after|i|im
calm-no-weight =
    cant walk the dog|today|because|far|there|outside|in this|now|much
    cant stand it|this|him|her|them|these|the
sign-back-weak-legs =
    back .. legs|leg .. <weak>
    back .. <weak> .. legs|leg
    legs .. <weak> .. back
    <weak> legs .. back
    numb|numbness .. between|saddle|privates|genitals|bottom|bum|groin|crotch
    saddle .. numb|numbness
    numb saddle
    cant feel my? legs|bottom|bum|feet|both
    no feeling in my? legs|bottom|feet|bum
    cant move my? legs
    legs|leg wont|cant|dont work|move
    legs are|have|feel|went|gone gone|went|both? paralysed|paralyzed|numb
    both legs .. <weak>
    cant pee|wee|urinate|poo
    cant pass water|urine
    lost|losing|no|cant control .. bladder|bowel|bowels
    lost|no control of|over my|the? bladder|bowel|bowels|pee
    back .. bladder|bowel|bowels|pee|wee
    bladder|bowel|bowels .. back
    soiled myself
    pooed|pooped myself
    bowel|bowels|bladder .. trouble|problem|problems|new
    trouble|problem|problems .. bowel|bowels|bladder
    cant feel .. wipe|wiping|pee|wee
    no feeling|sensation down below|there
    cant hold my? pee|wee|water|bladder|bowels .. legs
    legs .. cant hold my? pee|wee|water|bladder|bowels
    wet|peed|weed|pee|wee|soiled myself .. legs|leg .. <weak>|jelly|wobbly|hold|way
sign-sudden-back =
    sudden|suddenly .. back
    back .. sudden|suddenly
    <ache> .. back .. suddenly|sudden
    back just? went|popped|snapped|cracked|cracking|crunched|spasm|seized
    something .. back .. popped|cracked|went|snapped|pop|crack|snap
    something|pop|popped|crack|cracked|snap|snapped|crunch in my? lower|upper? back|spine
    new .. <ache> .. back
    new back pain
    back .. out of nowhere
    back gave out|way
    back went
    heard|felt .. pop|crack|snap .. back|spine
calm-sudden-back =
    sudden|suddenly .. back home|at|to
    went|came|come|go|be|get|got .. back
    back home|soon|later|at|to|from|on|in
sign-groin-thigh =
    groin
    groins
    <bite> .. thigh|thighs
    thigh|thighs .. <bite>
# the pain words that are more than plain soreness
bite =
    pain pains painful hurt hurts hurting ache aches ached aching achy ouch throb throbbing stabbing
    burning twinge twinges sharp tender discomfort agony swollen
sign-foot-shin-spot =
    spot .. foot|feet|shin|shins|heel|ankle|toe|leg
    foot|feet|shin|shins|heel|ankle .. spot
    foot|feet|shin|shins|heel|toe .. <ache> .. more|worse .. each|every|time|bout|day
    foot|feet|shin|shins|heel|toe .. more|worse each|every
    <ache> .. foot|feet|shin|heel .. more|worse each|every
    stress fracture
    shin|foot .. one|same place
    one|same place .. shin|foot
calm-foot-shin-spot =
    on the spot
    spot on
sign-calf =
    calf|calfs|calves .. swollen|swelling|swelled|warm|hot|red|painful|pain|hurts|hurt|hurting|tender|throbbing|bigger|hard|lump
    swollen|swelling|warm|hot|red|painful|pain|hurts|tender|throbbing|lump .. calf
    leg .. swollen|swelling|swelled|ballooned
    swollen|swelling .. leg|legs
    blood clot
    clot
    dvt
    one leg|calf is|looks? fatter|bigger|thicker|larger
sign-dizzy =
    dizzy
    dizziness
    dizzyness
    dizzily
    dizzier
    giddy
    lightheaded
    lightheadedness
    light headed
    light in the head
    woozy
    wobbly head
    vertigo
    spinning
    head .. spinning|spins|swimming|swims
    room .. spinning|spins
    racing heart
    palpitations
    unsteady
    off balance
    😵
    🥴
    heart .. <beating>
    i|ive|im go|going|gone|went all? funny|queer|strange|weird|odd|peculiar|hot|cold|sweaty|clammy|wobbly|shaky|swimmy|muzzy|fuzzy
    came|come|comes|coming over all? funny|queer|strange|weird|odd|peculiar|hot|cold|sweaty|clammy|wobbly|shaky|faint|giddy|swimmy|muzzy
    feel|feels|feeling|felt|went|going|go|im|am all? swimmy|muzzy|clammy|giddy|wobbly|shaky
    heart .. nineteen|missed|misses
    head feels|felt|is|goes|went all? light|floaty|fuzzy|foggy|woozy
    heart .. flip|flips|somersault|somersaults|lurch|lurched|leapt|jumped|flop
calm-dizzy =
    heart .. fast .. recover
    spinning class|bike|wheel
    dizzy with joy|happiness
sign-leak =
    leak
    leaks
    leaked
    leaking
    leakage
    leeking
    leek
    leaky
    wet|wetting|peed|pee|peeing|weed|wee myself|my|a|when|pants|knickers|bit
    dribble
    dribbled
    dribbling
    damp pants|knickers|pad
    wet pants|knickers|pad
    accident in my? pants|knickers
    little|small|bit|wee|had an? of? an? accident
    accident when .. jump|jumped|jumping|stomp|stomped|land|landed
    incontinence
    incontinent
    urine
    cant hold my|it? pee|wee|water|bladder
    heavy|dragging|bulge feeling? down? below|there
    wee|pee|water|urine came|comes|coming|leaks|leaked|dribbles|dribbled|squirts|squirted|runs|ran out|down
    wee|pee|waterworks problem|problems|trouble|accident|issue|issues
calm-leak =
    roof|tap|pipe|boiler|kettle|sink|toilet|radiator|fridge|dishwasher|gutter is|are|has|was|started? leak|leaks|leaked|leaking
    leaky|leaking roof|tap|pipe|boiler|sink|toilet
    leek soup
    leek and
    gas|water leak
    leak in the roof|ceiling|kitchen|house
sign-eye =
    flashes
    flashing lights
    flashs
    floaters
    floater
    floters
    curtain .. eye|eyes|vision|sight
    eye|eyes|vision|sight .. curtain|shadow|dark|black|gone|lost|flashes|blind|blurred|blurry|fuzzy|double
    lost|losing|loss .. vision|sight
    cant see
    went blind
    blind in
    blurred|blurry|double vision
    shadow .. eye|vision
    seeing stars|double|spots
    black|dark spots .. eye|eyes|vision|sight
    black spots
    zigzag|zigzags|jagged
    zig zag
    sparkles|sparkle|sparks|glitter|stars .. eye|eyes|vision|sight
    eye|eyes|vision|sight .. sparkles|sparkle|sparks|glitter|stars
    saw|see|seen|seeing stars
    eye|eyes|vision|sight .. floaty|floating|bits|cobweb|cobwebs|speck|specks|flecks|threads|flies|squiggles|strings|shadows
    specks|flecks|threads|squiggles|cobwebs|bits .. eye|eyes|vision|sight
    lights .. eye|eyes|vision|sight
calm-eye =
    hot flashes|flashs
    flashes of
    cant see why|how|the|my|a|any|it|you|that|him|her|what|buttons?
    black eye
    black eyed
sign-face-speech =
    face|mouth|lip|smile|eyelid .. droop|droops|drooping|drooped|droopy|dropped|lopsided|crooked|numb|fallen|falling|twisted|weak
    drooping|droopy|lopsided|crooked face|mouth|smile
    slurred
    slurring
    slur
    slurry speech|words
    cant speak|talk
    cant get|find .. words
    words .. wont|cant|dont|not|are|is|came|come|coming? come|coming|came? out|right? wrong|right|jumbled|slurred|funny|out
    words .. wrong|jumbled|slurred|muddled|stuck
    speech .. funny|slurred|wrong|gone|strange|weird|thick|slow|garbled
    trouble|difficulty|problem|problems speaking|talking
    hard to speak|talk
    face|mouth|lip|cheek is|feels|feel|felt|looks|look|looked|gone|went all? funny|odd|weird|strange|heavy|dead|stiff|wonky .. side
    one|left|right side of my|the? face|mouth|lip
    cant lift|move|raise|feel my? arm|arms|hand .. face|mouth|speech|words|talk|speak
calm-face-speech =
    cant talk|speak now|right|later|today|at|long
    face .. fallen leaves
sign-cannot-get-up =
    cant get|stand|sit|gt|git up
    cant .. get up
    cant get back? off|from|out the|of|my? floor|ground|chair|bed|bath|toilet
    cant get off|out of|from the? floor|ground|bath|toilet|bed|chair
    stuck|lying|laying|laid|lieing|stranded|down on|in|at the? floor|ground|bath|bathroom|kitchen|toilet
    im|am|still|been|was on the floor
    help .. on the floor
    on the floor .. help|cant|stuck
    help me up
    help me get|stand up
    need help getting|to get|stand? up
    cant move $
    cant get to my feet
    how do|can|should|will|would|could i get|stand back? up $
    how do|can|should|will|would|could i get|stand back? up|off from|off|the? the? floor|ground
    get|getting|stand|standing back? up|off from|off the? floor|ground
    how to get|stand back? up $
    dont|not know|remember how i got|get|came on|to|down the? floor|ground
    cant get myself up
    ground|floor|bathroom|kitchen|bath|stairs|hall .. cant move
    cant move send|help|please|and|i|im|now|get|someone|anymore
    found|find myself on|down on? the floor|ground
    came|come to on the floor|ground
calm-cannot-get-up =
    cant .. get up early|earlier|before|at|in|on|so|that|yet|till|until
    cant stand up straight? comedy
sign-emergency =
    911
    call|calling|ring|phone|dial|called 112|999|911|000|111
    ambulance
    🚑
    paramedic
    paramedics
    its|is|this|an? emergency
    choking
    seizure
    fit on the floor
    bleeding heavily|badly|lots|alot|everywhere
    bleeding a lot
    wont|cant|doesnt stop bleeding
    bleeding wont|doesnt|will stop|not
    lot|lots of blood
    🆘
    sos
    dying
    i think im? dying
    send|get|need someone|somebody|anyone|anybody|help $|please|now|quick|quickly|over|here|to
    send someone|somebody|help
    get me help
    somebody|someone|anyone|anybody please? help
calm-emergency =
    emergency number|contact|phone|exit|plumber
    emergency room contact
    not an? emergency
    no emergency
    dying to|for
    dying my|of laughter|laughing
    send|get|need someone|somebody|help to show|teach|explain
    send|get|need someone|somebody|help with the|this|my? bot|app|phone|link
# heard even where it is negated
sign-self-harm =
    kill|killing|hang|shoot|drown|cutting|end|ending|harm|harming|unalive|off myself
    kms
    leave|leaving|quit|quitting this|the|my? world|earth|life
    <wish> .. hurt|hurting|harm|cut|kill myself
    <wish> to? die|dead
    <wish> i was|were|had|could|would|am? dead|die|died|gone|never
    hope i dont? wake|die
    rather be dead
    be|being better off dead|without me
    better off dead
    better off without me
    suicide
    suicidal
    sucidal
    suicidle
    self harm
    selfharm
    end|ending|take|taking|took my own? life
    end it all
    ending it all
    end it $
    want|wish|like it|everything|this all? to? end|stop|over|finish
    point of|in|to? living|life|existing|being
    point in|of? going|carrying on
    way out of this|it|here?
    no way out
    nobody|noone|one|who would|will|cares|wouldnt? miss|care if|me
    use of|in living|life|going
    done|finished with life|living
    a burden to|on
    go to sleep and never|not
    never wake up
    not wake up
    disappear for|forever
    give|giving|given up on life|living
    hopeless
    do something silly|stupid
    <wish> .. be over
    <wish> i hadnt|didnt|wouldnt|wont? wake|woken|woke|born
    dont|not want|wish|care to? live|be here|alive|exist|go|wake .. 
    dont|not want to? be? live|here|alive|exist|wake
    dont want to be here
    dont want to wake up
    dont want to go on
    dont|doesnt care if i? live|die
    no|not a|any? point in? living|going|life|anymore
    no reason|point to|in live|living|go
    nothing|little? to live for
    life isnt|not|wasnt worth
    not worth living
    life is not worth
    tired|sick of living|life
    cant go on
    cant take it|this any|no? more|anymore
    cant take any|no more
    overdose
    overdosed
    took|take|taken|swallowed|taking all|too|whole .. pills|tablets|medicine
    jump off|from a|the bridge|roof|balcony|building|cliff
    everyone|everybody|they would|will|be .. better without me
    goodbye cruel world
    slit my wrists
    cut my wrists
    better off|of dead|gone|without
    dont|not|cant .. carry|carrying|going|go on anymore|any|longer|like|much
    dont|not .. carry|carrying on $
    <wish> to? .. be|go|join .. heaven
    enough of living|life
    enough of this|the|my life|world
    meet my maker
    end|ending things|everything
    be|been|im better dead
    the point of? any of it|this|them
    the point of? it all
    the point anymore|any
    the point of living|life|anything|everything|me $
wish =
    want wanted wish thinking thought thoughts think going feel feeling like ready urge about might
    could tempted rather plan planning hope wanting
calm-self-harm =
    cutting myself some slack
    cutting myself a slice
    off myself for
    end myself up
    <wish> .. hurt myself when|by|if|again
    afraid .. hurt myself
    about killing time

## Denials

# straight before a pain noun
none-words =
    no zero nil without nor neither non
# before any of them
cannot-words =
    cant cannot couldnt
not-words =
    not dont didnt doesnt isnt wasnt arent werent havent hasnt hadnt never aint wont wouldnt nothing
    none nobody nor neither
none-between =
    any more new real further other sign signs of feeling at all single actual or nor
    symptoms dizzy chest head neck back hip hips knee knees leg legs foot feet groin thigh calf shin
    muscle joint shoulder ankle left right lower upper sudden stomach heel leaks
not-between =
    have had has having feel felt feeling feels get got getting been be being any more a in from
    experienced experiencing noticed suffering or nor new is are was were sign of even once at all
    actually them it back hip hips knee knees leg chest head neck groin thigh calf shin ankle
# joins a list after a denial: "no pain, falls or leaks"
either =
    or nor
list-filler =
    , any a
# a denial followed by one of these is no denial
lift =
    except
    exept
    apart
    besides
    other than
    than
    until|till|til
    unless
    before
    at first
    at the? start|beginning
    to start
    aside
    but today|now|then|still|it
    though? today it
    only|just in|on|when|at|after|my|a|during|if|some|little
    not sure
    i wish
    i hope
    hopefully
# the same, but only straight after what was denied: "doesn't hurt much", but not "no pain, much better"
lift-next =
    that|too|so|as|very|quite|all that? much|bad|badly
    much|badly
    like yesterday|before|it|last
# a number after a word of pain that counts what was done: "that hurt 8 done"
score-not =
    <ache> <n> done|did|completed|finished|managed|made|reps|jacks|jumps|hops|stomps
# well-wishing that says nothing of the body
greeting =
    good morning|afternoon|evening|night|day
# a score after a word of pain: "hurts 5", "pain is a 5"
score =
    <ache> <score-link>? <score-link>? <score-link>? <n> /|of|out of? <n>
    <ache> <score-link>? <score-link>? <score-link>? <n>
    <ache> :|=|- <n>
    <ache> :|=|- <n> /|of|out of? <n>
    <ache> .. <n> /|of|out of? <n>
    <n> /|of|out of? <n> .. <ache>
    <n> /|of|out of? <n> <ache>
    score :|of|is? <n>
    score :|of|is? <n> /|of|out of? <n>
    level <n> <ache>
    a <n> <ache>
    <ache> .. level|score|about|like|scale :|is|of|a? <n>
    <ache> in|on my? <part> <part>? <n>
    <ache> in|on my? <part> <part>? is|about|around|at|level|a|:? <n>
    <ache> in|on my? <part> <part>? <n> /|of|out of? <n>
    <part> <ache> is|about|around|at|level|a|:? <n>
    <n> /|of <n> in|on|at|for my|the? <part>
    <n> /|of <n> in|on|at|for my|the? <part> <part>
score-of =
    of
    out of
score-link =
    level score is was at about of a an like around roughly now maybe only scale still today the
    rating
# a number straight before a noun of pain could be a score or a count
score-doubt =
    <n> <ache-noun>
ache-noun =
    pain pains ache aches soreness discomfort
but =
    but however though although because cause cos cuz except

## What is said in the place of a button's words, in the questions about pain and falls

say-place-back =
    back
    spine|lumbar|tailbone|coccyx
say-place-hip =
    hip|hips
    buttock|buttocks|bum|bottom|backside
say-place-groin =
    groin|groins|pelvis|pubic
say-place-thigh =
    thigh|thighs|hamstring|hamstrings|quad|quads
    back|front of my|the? left|right? leg|thigh
    upper|top leg|legs
    top of my|the left|right? leg
say-place-knee =
    knee|knees|kneecap|kneecaps
    back|side|front|inside|outside of my|the? left|right? knee
say-place-shin =
    shin|shins
    lower leg|legs
    front of my|the lower leg
say-place-foot =
    foot|feet|heel|heels|toe|toes|sole|soles|arch|arches|instep|ankle|ankles
    bottom|top|side|ball of my|the left|right? foot|feet
say-place-elsewhere =
    neck|shoulder|shoulders|arm|arms|elbow|elbows|wrist|wrists|hand|hands|finger|fingers|thumb|thumbs
    rib|ribs|tummy|stomach|belly|jaw|calf|calves|head
    back|side of my|the neck|head|calf|arm|hand
    all over|everywhere
    elsewhere
say-when-during =
    during|while
    when|as|whenever i? jump|jumped|jumping|stomp|stomped|land|landed|hop|did|do|was doing|exercise|exercised
    each|every time|jump|stomp|one
    at the time
say-when-after =
    afterwards|afterward
    after it|them|that|the|i|my|doing|an|a
    later on|that|today
say-when-next-morning =
    next|following|day morning|day|after
    morning after
    when i? woke|wake up
    getting out of bed
say-when-other =
    all|most of? the time
    always|constantly|constant|whenever
    at|in|during the? night
    at rest
    when|while|whenever i? sit|sitting|stand|standing|walk|walking|lie|lying|sleep|sleeping|rest|resting|climb|climbing
    on and off
say-new =
    new
    never had|felt|got
    not had|felt it|this|that before
    havent|hadnt had|felt it|this|that before
    first time
    not|isnt|unlike as? like? the|my|it? same|usual|old|always|before
say-known =
    not|nothing new
    old|usual|known|familiar
    had|have|get|felt it|this|that before|always|often|already|sometimes
    had|have it|this|that for years|ages|months|weeks|long|a
    same|as as|one|old usual|always|before|ever|one
    the? same
    for years|ages|months
    comes and goes
say-sharper =
    worse|sharper|stronger|sharp|stabbing|fiercer
    more|worse|sharper|stronger than usual|normal|before|ever|always|it
    a? bit|lot|much|little worse|sharper|stronger
    not|isnt|unlike as? like? the|my|it? same|usual|normal|always|before
say-as-usual =
    same|usual|normal|similar
    not|no|isnt|nor any? worse|sharper|stronger|sharp|different|more
    no more|worse than usual|normal|before|ever
    less|milder|better than? usual|normal|before?
    the? same as usual|before|always|normal|ever
    as usual|always|before|normal|ever
say-fall-today =
    this morning|afternoon|evening|lunchtime
    just now
    now
    a|an|one|two|few|<n> hour|hours|minute|minutes|mins ago
    earlier today|on
    tonight
say-fall-yesterday =
    last night|evening
    yesterday morning|afternoon|evening|night
say-fall-earlier =
    last|other week|month|weekend|day|monday|tuesday|wednesday|thursday|friday|saturday|sunday
    on? monday|tuesday|wednesday|thursday|friday|saturday|sunday
    <n>|few|couple|several of? days|weeks|months ago
    a week|month|while ago
    day before yesterday
say-doing-exercise =
    jacks|jumps|stomps|hops|exercise|exercises|exercising|bout|marching|raises
    heel drops|raises
    jumping|stomping|hopping
say-doing-walking =
    walk|walked|walking
    in|on|down the? street|road|pavement|park
    out shopping|for|with
    crossing the? road|street
    dog
say-doing-stairs =
    stair|stairs|steps|step|staircase|ladder
say-doing-getting-up =
    getting|got|get|standing|stood|stand|rising up|out
    out of bed|bath|the|my|a? bed|bath|chair|armchair|sofa
    off the|my toilet|sofa|chair|bed
say-doing-other =
    shower|bath|bathroom|kitchen|garden|gardening|cleaning|cooking|dancing|hoovering|laundry|dressing|reaching
    nothing
    bus|train|car
say-mistake =
    ^ oops|whoops|sorry? $
    by|a mistake|accident $
    tapped|pressed|touched|hit|pushed it|this|that|the? by? mistake|accident|accidentally
    accidentally tapped|pressed|touched|hit|pushed
    wrong button|one|key|thing
    mistaken $
    didnt mean to? tap|press|touch|it|that|to $
    ^ undo|cancel that|it? $
say-sign-chest =
    ^ my|the? chest $
say-sign-breath =
    ^ my|the? breath|breathing $
say-sign-face-speech =
    ^ my|the? face|speech $
say-sign-head-knock =
    ^ my|the? head $
say-sign-calf =
    ^ my|the|one? left|right? calf $
say-sign-eye =
    ^ my|the|one? left|right? eye|eyes $
say-sign-groin-thigh =
    ^ my|the? left|right? groin|thigh $
