### What we understand in Spanish. (What we say is in a catalogue of its own.)
###
### Same keys as `hear_en.ftl`, whose head tells how phrases are written. Usted, tú and vos, Spain and
### America, from memory; no native clinician has looked at it yet.
###
### Words are without accents here: "mañana" is "manana", "sí" is "si", "inglés" is "ingles". Words
### made up for the respelling, which nobody types: "nopuedo" (cannot), "sinfuerza", "derepente",
### "matina" (the morning, while "manana" is tomorrow).
### "No me duele" without a comma is a denial; "no, me duele" is none. "Nada" denies only before "de"
### and at the start: "no hice nada me duele la rodilla" is pain.

## Spelling

spell =
    half = mitad
    media docena = seis
    no puedo|pude|podia|podria|puede|pudo|logro|logre|consigo|consegui|alcanzo|podre = nopuedo
    no me|te|lo|la|las|los|se|le|nos puedo|pude|podia|podria|puede|pudo|logro|logre|consigo|consegui|podre = nopuedo
    no me|se puedo|pude|puede|pudo|podia|logro|logre|consigo|consegui levantar|parar|incorporar = nopuedo levantarme
    no me|se puedo|pude|puede|pudo|podia|logro|logre|consigo|consegui mover = nopuedo moverme
    no me|se puedo|pude|puede|pudo poner de|en pie = nopuedo ponerme de pie
    no puedo|pude|podia ni = nopuedo
    ya no puedo|pude ni = nopuedo
    no soy|fui|era|es|seria|estoy capaz de = nopuedo
    no quiero|quisiera seguir|estar = noquiero seguir
    sin fuerza|fuerzas = sinfuerza
    no tiene|tengo|tienen fuerza|fuerzas = sinfuerza
    no me responde|responden = sinfuerza
    sin sensibilidad = entumecida
    de repente|pronto|golpe|sopeton|subito = derepente
    de la nada = derepente
    fin de semana = finde
    subitamente|repentinamente|subito|subita|repentino|repentina|brusco|brusca = derepente
    no pasa nada = tranquila
    claro que no = negativo
    claro|por que|supuesto si = si
    por supuesto que no = negativo
    desde luego que no = negativo
    nada de esto|eso|nada|ello|lo = ninguno
    nada de = ningun
    la manana = la matina
    esta manana = esta matina
    toda manana = toda matina
    media manana = media matina
    las mananas = las matinas
    de mananita = de matina
    la mananita = la matina
    hoy manana = hoy matina
    pasado manana = en dos dias
    hoy|ahora no me duele|duelen|molesta nada = no me duele nada
    a el = al
    de el = del
    q = que
    k = que
    ke = que
    xq|porq|pq = porque
    pq = porque
    x = por
    c / u = cada una
    c / lado = cada lado
    c / pierna = cada pierna
    p / lado = por lado
    aller = ayer
    hayer = ayer
    anohe = anoche
    ase = hace
    ise|hise|isce|jice|hize|ice|iice|hicee|ize = hice
    isimos|hisimos|icimos = hicimos
    echo|hehco|hecgo = hecho
    echas|hechs|hehcas = hechas
    echos = hechos
    termine|termien|trmine = termine
    yahice = ya hice
    yalohice = ya lo hice
    repes|rep|reps|repe = repeticiones
    vecs|beses|veses = veces
    duel|dule|duelee|duelle|duwle|duele|dueel|deule|duelw|duene|duelr|duelo = duele
    duelem|dulen|dueln = duelen
    me due = me duele
    meduele = me duele
    meduelen = me duelen
    medolio = me dolio
    nomeduele = no me duele
    medio dolor = me dio dolor
    dolo|dolr|dolot|dolpr|doolr|dlor|dorlo|dolir|dolro|doloor = dolor
    dolio|doli|dolioo = dolio
    molest|molestai|molesita|molstia = molestia
    mecai = me cai
    mecai = me cai
    me cahi|kai|calli|cay|caii|cei = me cai
    me e|he|eh caido = me he caido
    caida|caidda|caiida = caida
    tropese|tropese|tropece = tropece
    resvale|resbale|rresbale = resbale
    mariada|marieada|mareda = mareada
    mariado = mareado
    marie = maree
    mareoo = mareo
    resp = respirar
    respiar|repirar|rrespirar|respira|respirr = respirar
    pexo|pehco|pechp = pecho
    rodiya|rodila|rrodilla|rodlla|rodilal = rodilla
    rodiyas|rodilas = rodillas
    espalad|espald|esplada|ezpalda = espalda
    kadera|caderra|cadra = cadera
    tovillo|tobiyo|tobilo = tobillo
    pantorriya|pantorilla|pantorrila = pantorrilla
    espiniya|espinila = espinilla
    caveza|cabesa|kabeza = cabeza
    musculo = musculo
    yngle|hingle = ingle
    emos = hemos
    despues|despue|dspues|dsp|desp|depues|despes|luegoo = despues
    mas|ms tardes|tard|trde|atrde = mas tarde
    mastarde = mas tarde
    aora|haora|ahorra = ahora
    orita|aorita|horita = ahorita
    tmb|tb|tambn = tambien
    xfa|xfavor|porfa|porfis|porfavor = por favor
    plis|please = por favor
    pa = para
    toy = estoy
    ayud|alluda|aiuda|ayuad|aydua|ayyuda = ayuda
    bora|borar|borrrar|vorrar|borrra = borrar
    desaser|deshaser|desacer = deshacer
    kiero|qiero = quiero
    biaje|viahe = viaje
    bacaciones|vacasiones = vacaciones
    bolvi = volvi
    mnn|mnn|manna|maniana = manana
    min|mins|mn|minuts|minutitos|minutos = minutos
    hrs|hs = horas
    quinse = quince
    dies = diez
    dose = doce
    trese = trece
    catorse = catorce
    onse = once
    sinco = cinco
    ceis = seis
    ciete = siete
    hocho = ocho
    vente|beinte|viente|veinet = veinte
    trienta = treinta
    veintiun = veintiuno
    treinta y un = treinta y uno
    cuarenta y un = cuarenta y uno
    cincuenta y un = cincuenta y uno
    sesenta y un = sesenta y uno
    setenta y un = setenta y uno
    ochenta y un = ochenta y uno
    noventa y un = noventa y uno
    nada mas = nomas
    veintiuna = veintiuno
    si si = si
    sip|sii|siii|sep|sipi|yes|ye = si
    nop|nel|nones|noo|nooo|nah = no
    mucho mejor = mejor

# Words that look like a slip of a word below but are not.
innocent =
    aboga abogo aede aguda arce arcor arduo arre arrio arse baixo birra boero borda borde bordo cairo caixa caja carr
    carre caso cato cauda chia chos chus cocos codi cojes cona coro coros coso cosos doma dome helo hina hino hoja infle
    japon limo lines loado loko luce marek mares marro mateo mika mima mina mirad moja nica nila nilo nuda null odin
    oribe paisa pili pinza pipa pipo popi pula pupi queja quena queno renta rompo salvi simo sink tango tirso tocas toco
    tora toro toros tosa toso toxo trago
    tanda tandas
    salida salidas novena venta ventas cientos cuenta cuentas cuanta cuanto cuantas cuantos mujer
    verdad pecado pecador hecha colores color valor calor sabor labor favor flores doctor actor
    cadena caderas cabello cabezal molesto modestia molestar pausada causa pauta pasado pasada
    pesada calada caricia sentada sentado mareas marca marcas marea parada parado
    banada manada semana semanas hermana ventana campana campanas montana
    tarde tardes saltar salsa vuelta vueltas volver vivir vivo vimos
    caminar comida comidas bebida medida
    respuesta respeto respetar resultado sesion leccion leccion lesiones presion
    pastel pastilla plantar planta plancha plata
    caliente valiente mediente cliente pendiente
    tirar tiro tirada retiro
    pinchar ponche
    dormir dormirme dormido
    sangria
    rato ratos rata roja rojo ropa rosa rota ruta
    cerrar hablar labrar
    terminal terminar
    ayudante ayudado ayudaba
    viajero viajeros
    hinchas
    moreton
    veinteanera docente
    quinta quinto treintena sesentena cuarto cuartos cuarta
    fiesta siesta gripe grupo gripa
    quemar quesos queso
    golpear ardilla
    fractal rompe
    hormiga hormigas
    consulta
    alarma
    hoteles
    duende dueno duena duelos dulce
    caimos
    agujas aguja
    mesas mases
    ninguneo
    bromas broma
    nublado
    puntos puente puntual
    escapar
    ciegos cielo
    torcido
    mojar mejor mayor
    tropas tropical
    venas venir
    matar mata

## Numbers

# "un" is an article and no number, save after "treinta y"
number =
    cero = 0
    uno = 1?
    una = 1?
    primera = 1?
    dos = 2
    tres = 3
    cuatro = 4
    cinco = 5
    seis = 6
    siete = 7
    ocho = 8
    nueve = 9
    diez = 10
    once = 11
    doce = 12
    trece = 13
    catorce = 14
    quince = 15
    dieciseis = 16
    diecisiete = 17
    dieciocho = 18
    diecinueve = 19
    veinte = 20
    veintiuno = 21
    veintidos = 22
    veintitres = 23
    veinticuatro = 24
    veinticinco = 25
    veintiseis = 26
    veintisiete = 27
    veintiocho = 28
    veintinueve = 29
    treinta = 30
    cuarenta = 40
    cincuenta = 50
    sesenta = 60
    setenta = 70
    ochenta = 80
    noventa = 90
    cien = 100
    ciento = 100
    doscientos = 200
    doscientas = 200
    trescientos = 300
    trescientas = 300
    cuatrocientos = 400
    cuatrocientas = 400
    quinientos = 500
    quinientas = 500
    docena = 12
    decena = 10
    veintena = 20
    quincena = 15?
    diesiseis = 16
    diesisiete = 17
    diesiocho = 18
    diesinueve = 19
    dieziseis = 16
    dieziocho = 18
    beintidos = 22
    beinticinco = 25
    trenta = 30
    quarenta = 40
    cuaranta = 40
    cincuanta = 50
    sincuenta = 50
    cesenta = 60
    nobenta = 90
# "y" joins after tens: "treinta y uno"
number-and =
    y = 10

## Counting

# words that say a number was done
done =
    hice hicimos hizo hecho hecha hechos hechas realice realizado realizadas realizados complete
    completado completadas completados completamos termine terminado terminadas terminados
    acabe acabado acabadas logre logrado llegue llevo llevaba llevamos alcance consegui
    saque cumpli cumplido cumplidas llegamos logramos terminamos cumplimos sacamos aguante solo solamente unicamente nomas total totales cuento
    conte van fueron salieron apunta apunte apunten apuntame anoteme apunteme anota anote anoten anotame anoto
    registra registre pongame ponme marca marque
    pude pudimos
# what is counted
unit =
    repeticiones repeticion vez veces salto saltos saltitos saltito pisada pisadas bajada bajadas
    pisoton pisotones talon talones pequeno pequenos pequenas suave suaves firme firmes fuertes fuerte
    tijera tijeras paso pasos marcha marchas ejercicio ejercicios elevacion elevaciones levantamiento
    levantamientos subida subidas sentadilla sentadillas brinco brincos golpecitos talonazos pie zapateos
    zapatazos caida caidas
# words that may stand next to a count without changing it
plain =
    yo ya he ha hemos tengo acabo de del hacer hacerlas hacerlos hacerlo hasta ahora hoy esta este estas estos esa ese esos
    matina manana tarde noche mediodia mediatarde almuerzo desayuno cena comida siesta ellas ellos las los la
    el lo mi mis un unos unas y & entonces en total todo todas todos mas otra otras otro otros por favor
    para con al a como aproximadamente alrededor ok okay vale bueno buena buenas buenos dias si claro hola
    doctora doctor doc dra dr senora senor seno querida gracias muchas muy bien que terminar completar acabar perfecto genial facil rico despacio
    lento lentas rapido rapidas seguidas seguidos ayer anoche ayercito o primera segunda tercera
    tanda tandas serie cada lado lados pierna piernas costado derecha izquierda antes despues pero aunque luego
    cansada cansado cansadita aqui alli asi ahi dura duro dificil pudo se me le les te fui fue era eran hecho
    bot boutwise nuevamente estoy estaba despues porque mientras cuando sola solo
    solita calor lluvia tele casa cocina afuera fuera adentro zapatos patio jardin silla mesa apoyada agarrada
    apoyado agarrado sujeta sujetandome agarrandome contenta contento orgullosa hija hijo marido esposo
    ay uf ah eh jaja jajaja pues mmm amiga mira fijate sin problema problemas dolor ninguna ningun tranquila tranquilo
    completo completa completas completos enteras enteros olvide olvido decirle decirte decir avisar avise
    avisarle perdon disculpe disculpa logre poco poquito mejor mismo misma hora rato hace juntas juntos
    dije digo cuenta nuevas nuevos ultimas ultimos buenas lindas bonitas recien acaba
    amaneci saltee omiti vi viendo tambien tampoco
    listo lista listos listas justo exactamente exactas novedad descansando descanse descanso
# these near a number mean: ask before counting
doubt =
    voy vamos va ire hare haremos puedo podria podrias puede pueden quiero quisiera querria debo deberia toca tocan
    intentare intento tratare trate planeo pienso queria cambio correccion error equivoque
    equivocado casi menos maximo minimo bajo entre quizas quiza capaz supongo creo creeria parece imagino
    seguro segura segun cuantas cuantos cuanto cuanta cual cuales algunos algunas varias varios
    pocas pocos doble triple nopuedo nunca jamas no noquiero debia tenia habia necesito hay falta faltan
    faltaron faltaba quedan meta objetivo proxima proximo lunes martes miercoles jueves viernes sabado domingo
    semana semanas mes meses ano anos lugar vecina nieto nieta cambiar cambie corregir debio dijo dijeron mando
    haciendo
# "una" after these is a pronoun
pointing =
    esta este esa ese cada ninguna ningun otra otro la el primera ultima segunda tercera buena mala
    alguna algun mi tu su cualquier
# two counts: ask
count-range =
    <n> -|a|o|u|/|hasta <n>
    entre las|los? <n> y|o|a <n>
    <n> - <n> - <n>
    <n> / <n> / <n>
    <n> por|x|veces|series|tandas|rondas|vueltas|bloques de? <n>
    <n> series|tandas|rondas|vueltas|bloques
    <n> y media|medio|pico
    <n> k
    <n> o|l|i $
    mitad de las|los? <n>
    media <n>
    ^ para|a|hasta|de|desde|por <n>
    ^ las|los <n> $
    por|sin|para hacer|llegar|terminar|completar <n>
    me? faltan|falta|quedan|queda|faltaron|faltaba|faltaban solo? <n>
    <n> por hacer
    <n> me? faltan|faltaron|quedan|quedaron
    <n> pendientes|restantes
    pare|paro|acabe|termine|empece|empiezo|deje|segui en|a|despues|tras|con de? las|los|la? <n>
    desde las|los|el? <n>
    de <n> a|hasta <n>
    hice|hecho|llevo|complete|realice|solo|nomas <n> minutos|minuto|hora|horas|segundos
    mas|menos|cerca de <n>
    tengo|tenia|debo|hay que hacer <n>
    casi <n>
    al menos <n>
    por lo menos <n>
    <n> o mas|menos
    mas o menos $
    me? salte|saltee|deje <n>
    la|las de las|la <n>
    pero? no <n>
# "12 de 20" is 12; "5 de 10" could be a pain score
count-of =
    <n> de las|los|mis|un? <n>
    <n> de un total de <n>
plus =
    + mas
count-each =
    por|cada|de cada? lado|pierna|pie|costado
    con|en|de|a|por|para cada una|uno|lado|pierna|pie|costado|lao
    cada una|uno|lado|pierna|pie|costado
    cada $
    en|de|a|con|por ambos|ambas lados|piernas|pies
    en|de|a|con|por los|las dos lados|piernas|pies
    ambos lados
    ambas piernas
    izquierda y derecha
    derecha y izquierda
# the same number for left and right is that number each side
count-left-right =
    <n> a|en|con|de|por? la|el? izquierda|izquierdo|izq y|,|e? <n> a|en|con|de|por? la|el? derecha|derecho|der
    <n> a|en|con|de|por? la|el? derecha|derecho|der y|,|e? <n> a|en|con|de|por? la|el? izquierda|izquierdo|izq
    izquierda|izq|izquierdo :? <n> y|,? derecha|der|derecho :? <n>
    derecha|der|derecho :? <n> y|,? izquierda|izq|izquierdo :? <n>
    <n> d|der <n> i|izq
    <n> i|izq <n> d|der
    <n> de|a|con|por un|una lado|pierna|pie|costado? y|,? <n> del|de|al|a|con otro|otra|la|el lado|otra|otro? lado|pierna|pie|costado?
# numbers that count something else
count-other =
    <n> anos|ano|anitos|dias|dia|semanas|semana|meses|mes|horas|hora|minutos|minuto|segundos|segs|seg|s
    por|durante|hace <n> minutos|horas|dias|semanas|meses|anos
    <n> kilos|kilo|kg|libras|mg|ml|km|kilometros|metros|m|cm|cuadras|manzanas|grados|pastillas|pastilla|tabletas|gotas|tazas|vasos|escalones|escalon|pisos|personas|amigas|nietos|nietas|hijos|perros|gatos|pesos|euros|dolares|soles|am|pm
    <n> por ciento
    <n> %
    $|€|£|# <n>
    dia|semana|nivel|parte|edad|sala|piso|habitacion|calle|casa|codigo|clave <n>
    una caida|caidas
    <n> rodillas|caderas|hombros|tobillos|pantorrillas|muslos|dedos|brazos|manos|ojos
    las|mis|mi|en|los <n> piernas|pies|talones
    <n> veces al|por|a dia|semana|la
    <n> de|del? enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|setiembre|octubre|noviembre|diciembre
    covid|b|vitamina|d - <n>
    vitamina b|d <n>
    covid|b <n>
    la|lo|las una de ellas|ellos
    los|las|nosotras|nosotros dos $
# a number that says which one
count-label =
    tanda|serie|ronda|vuelta|numero|num|nro|no|ejercicio|bloque <n>
    la|el tanda|serie numero? <n>
# some were done, how many is not said
count-vague =
    hice|hecho|llevo|logre|solo|nomas|apenas|complete algunas|algunos|unas|unos|pocas|pocos|varias|varios|poquitas|poquitos|parte
    unas|unos cuantas|cuantos|pocas|pocos
    algunas|algunos|varias|varios|poquitas $
    la mayoria
    la mayor parte
    casi todo|toda|todas|todos|termino|acabo|terminado
    no|ni todas|todos
    no las|los? hice todas|todos
    todas|todos menos|excepto|salvo <n>|una|uno|la|el
    no del todo
    no llegue
    ninguna|ninguno $
    hice ninguna|ninguno|nada|cero
    hice las|los dos
    menos|mas de la mitad
    casi la mitad
    ni la mitad
    hice poco|poquito
    hice lo que pude
    mas o menos
# a bare yes: asked, unless "all" or "half" is said beside it
count-yes =
    ^ si|claro|ya|okey|aja $
    ^ si ya|claro $
count-all =
    todo
    toda
    todas
    todos
    hecho
    hecha
    hechos
    hechas
    listo
    lista
    listos
    listas
    termine
    acabe
    complete
    completo
    completa
    completado
    completada
    completadas
    completados
    terminado
    terminada
    terminadas
    terminados
    cumpli
    cumplido
    cumplida
    las|los|lo|la hice
    lo|las|los|la he hecho
    lo|las|los|la termine|acabe|complete|cumpli
    ya las|los|lo|la? hice
    ya esta|estan|estuvo|quedo|quedaron
    hice todo|toda|todas|todos|lo|la|esa|esta|completo
    la|toda tanda|serie completa|entera
    las hicimos
    al cien
    finalizado
    finalice
    finalizada
    ✅
    ✔
    ☑
count-half =
    mitad
    la mitad
    media tanda|serie
    a medias
not-all =
    todo|todos|todas bien|perfecto|genial|ok|okay|tranquilo|correcto|igual|mal|mejor|el|la|los|las|cuanto|esto|eso|este|ese|un|a|mundo|empezo|fue|me|va|anda|lo|por|se|duele
    todo|todos el dia|tiempo|mundo
    sobre|con|de|ante|asi|del|para|a todo
    en total
    media hora
    hora y media
    todos los|mis dias|
    toda la|mi noche|tarde|matina|semana|vida|pierna|espalda
    todas las|mis matinas|noches|tardes|semanas
    por completo
    estoy|estaba lista|listo|hecha|hecho
    lista|listo para
    de|del hecho
    hecha|hecho polvo|mierda|pedazos|pomada|un|una|bolsa|trizas
    lista de|del
    la mitad de mi|la
    a mitad de
    no acabe|termine|complete de
    el|la completo
not-done =
    no las|los|la|lo|he|me|hemos|se? hecho|hice|hicimos|terminado|termine|acabe|complete|hago|haga|logre|hizo
    no las|los|la|lo he hecho|terminado|completado
    no hice|hicimos|he
    todavia|aun no
    todavia|aun no hice|he|las|los|lo|la|termine|hecho
    nunca las|los|la|lo? hice
    sin hacer|terminar
    nopuedo hacer|hacerla|hacerlas|hacerlo|hacerlos|terminar|terminarla|acabar
    noquiero hacer|hacerla|hacerlas|hacerlo
    estar|estara|estaran|tendre|quedara hecho|hecha|hechas|listo|listas
    por|para hacer|terminar $

## Days

yesterday =
    ayer
    anoche
    ayercito
    el dia anterior
    ayer noche
other-day =
    antier
    anteayer
    antiayer
    antayer
    antes de ayer
    antenoche
    anteanoche
    lunes|martes|miercoles|jueves|viernes|sabado|domingo
    lun|mie|jue|vie|sab
    hace <n> dias|semanas
    hace un|una|unos|varios|unas dia|dias|semana|semanas
    la|el semana|mes|lunes pasada|pasado
    el otro dia
    esta|toda semana
    el finde
    el proximo|otro lunes|martes|miercoles|jueves|viernes|sabado|domingo
tomorrow =
    manana
    otro dia
    la proxima vez|semana
    el|al dia siguiente
    la semana que viene
    la semana proxima
    la proxima
weekday-0 =
    lunes lun l
weekday-1 =
    martes mar mart m
weekday-2 =
    miercoles mie mier x mi
weekday-3 =
    jueves jue juev j
weekday-4 =
    viernes vie vier v
weekday-5 =
    sabado sabados sab s
weekday-6 =
    domingo domingos dom d
day-flexible =
    flexible flexibles cualquiera cualquier igual varia varian ninguno indistinto dia da
day-today =
    hoy ahora ya
day-tomorrow =
    manana
day-every =
    diario diarios diariamente cada dia dias todos los
day-joiner =
    y e o & mas el los la de del por en a cada
month-1 =
    enero ene
month-2 =
    febrero feb
month-3 =
    marzo mar
month-4 =
    abril abr
month-5 =
    mayo may
month-6 =
    junio jun
month-7 =
    julio jul
month-8 =
    agosto ago
month-9 =
    septiembre setiembre sep sept set
month-10 =
    octubre oct
month-11 =
    noviembre nov
month-12 =
    diciembre dic

## Short answers

# How a break is told: why, from when, how long, and that it is over.
away-travel =
    viaje viajo viajamos viajando viajar viajes vacaciones vacacion crucero excursion fuera playa paseo pueblo
    extranjero
away-illness =
    enferma enfermo enfermedad enferme mala malita malito gripe gripa gripazo catarro resfriado
    resfriada resfrio constipada constipado covid fiebre calentura virus infeccion bronquitis neumonia pachucha
    griposa engripada engripado
away-day =
    dia dias
away-week =
    semana semanas semanita
away-fortnight =
    quincena quincenas
away-weekend =
    finde
away-one =
    un una
away-two =
    par
away-some =
    unos unas pocos pocas varios varias par algunos algunas
away-until =
    hasta
away-from =
    desde empezando partir
# "vuelvo el lunes": the day after the last one
away-return =
    vuelvo volvere volvemos regreso regresare regresamos vuelta volviendo regresando retorno vuelve
away-span =
    a al hasta - y & e
away-later =
    viene entrante proximo proxima proximos proximas siguiente siguientes pronto
# what it follows has been already: "enferma desde el lunes", "hace 3 días"
away-past =
    hace llevo pasado pasada ayer estuve estaba llevamos
away-in =
    en dentro durante principios finales mediados
away-of =
    de del
away-the =
    el la los las
away-ordinal =
    ro
# between "hasta" and the day
away-skip =
    el la los las dia este esta que por
# names of days only where a word leads up to them
away-doubt =
    mar sab dom lun mie jue vie
away-no-day =
    l m x mi j v s d
away-unsure =
    se segura seguro idea depende sabemos ni
break-over =
    ^ ya? he? volvi|vuelto|regrese|regresado|llegue|volvimos|regresamos de? mi|mis|las|los|la|el? viaje|vacaciones|pausa|descanso|hospital|playa? ya? $
    ^ ya? estoy|estamos|toy ya? de? vuelta|regreso|aqui ya? $
    ^ ya estoy|estamos en casa $
    ^ ya? de vuelta|regreso ya? en|de? casa|las|mis|mi? vacaciones|viaje? $
    ^ ya? volvi|regrese|llegue|estoy en|a mi? casa
    ^ ya he vuelto|regresado
    ^ ya? volvi|regrese del|de viaje|vacaciones|la|las|mi|mis
    terminar|termina|termine|termino|acabar|acaba|acabo|acabe|fin|cerrar mi|la|de|con la|mi? pausa|descanso
    pausa|descanso|viaje|vacaciones ya? se? acabo|termino|terminada|terminado|acabaron|terminaron
break-none =
    no|sin|noquiero quiero|necesito|hace|hagas|hagan|hay|tomo|tomare|estoy? ninguna|una|un|la|mi|en|de? pausa|descanso|vacaciones|falta|viaje $
    mejor sin pausa|descanso
    ^ cancelar|cancela|cancele|cancelo|cancelamos|anular|anula|anule|quita|quitar|quite el|la|mi|mis|las|nuestro? pausa|descanso|viaje|vacaciones
    no me|nos? voy|vamos|viajo|viajamos|ire|iremos
    pausa|viaje|vacaciones|descanso se|fue? cancelo|cancelado|cancelada|canceladas|cancelaron|anulado|suspendio
    ya no viajo|viajamos|salgo|salimos
# Companion exercises by name, and what is counted of them.
companion-back-raise =
    subir|levantar|elevar|subida|subidas|elevacion|elevaciones|levantamiento|levantamientos|subiendo|levantando|subi|levante de|la|mi? la? espalda|tronco ,? boca? abajo?
    espalda boca abajo
    boca abajo
companion-hover-hold =
    plancha|planchas
    plancha|planchas a? gatas
    a gatas
    gatas
    cuatro patas
    cuadrupedia
companion-round =
    ronda rondas serie series vuelta vueltas
companion-second =
    s seg segs segundo segundos sg
companion-rep =
    repeticiones repeticion vez veces
companion-link =
    de del la las el los mi mis un una : - , . en
companion-none =
    no ninguna ninguno ningun nada nopuedo noquiero omitir salte
# Leaving for good. It only ever leads to a question.
leave =
    quiero|deseo|quisiera|necesito irme|salirme|dejarlo $
    quiero|deseo|quisiera|necesito irme|salirme|dejar|salir del|de|el|este|esto programa|servicio|chat|bot|aqui|clinica|grupo?
    me quiero ir|salir $
    darme|deme|denme|dame|dar|darse|dese|dejarme de baja
    me doy de baja
    dejo|dejar|deje|salir|salirme|salgo del|el|este programa|servicio
    dejar|dejarlo|dejo|parar|pare|salir|irme para siempre
    borrar|borre|borra|borren|borrame|elimine|eliminar|elimina|eliminen|quite todos? mis|los datos|cuenta|ficha|registro|registros|informacion
    cerrar|cierre|cierren mi cuenta|ficha|registro
not-leave =
    no|noquiero quiero|deseo? irme|salir|salirme|dejar|dejarlo|darme
    como me? doy|puedo|hago
# The two trials of a step test. A trial without a time: balance lost, a marker touched, a wrong order.
step-void =
    nulo|nula|nulos|nulas|invalida|invalido
    sin tiempo
    no vale|valio
    perdi|pierdo el? equilibrio
    equilibrio perdido
    orden equivocado|incorrecto|mal
    me? equivoque de|el orden
    mal el? orden
    toque|pise|movi el|la|los|las|un|una? palo|palos|baston|bastones|cinta|marca|marcas|cruz|linea|lineas
step-both =
    ambos ambas dos las los
step-first =
    primera primero primer 1a 1o
step-second =
    segunda 2a 2o
# Letters right after 1 or 2 that make it the first or the second.
step-ordinal =
    a o
step-point =
    punto coma con
step-filler =
    intento prueba vez tiempo fue es y luego la el las los mi un una s seg segs segundos segundo tarde en hice
answer-yes =
    si claro vale ok okay okey correcto correcta exacto exactamente cierto verdad dale acepto afirmativo bueno acuerdo
    👍 ✅ ✔
answer-no =
    no nunca jamas tampoco negativo incorrecto nada ninguno ninguna ningun falso 👎 ❌
answer-none =
    no ninguno ninguna ningun ningunos ningunas nada nunca abierto - 0 cero sin
# what may stand beside a "no" and leaves it one; with anything else it is unclear
answer-filler =
    gracias
    muchas|muchisimas gracias
    por favor
    por suerte
    gracias a dios
    senora|senor|doctora|doctor|doc|dra|dr|hija|hijo|mija|querida
    hoy
    hasta ahora
    todavia|aun no
    para nada
    en absoluto
    que va
    pues|ay|ah|eh|uy|oh|bueno
    nada|ninguno|ninguna de estas|esas|ellas|ellos|estos|esos|lo cosas? anterior?
    no tengo|tuve|hay|he|hubo tenido? nada|ninguno|ninguna|ningun
    no me pasa|paso nada|ninguno|ninguna
    afortunadamente

## Hours in a short answer: "de 8 y media a 12 y cuarto", "de 8 de la mañana a 8 de la noche". One
## thing a line; here "manana" is the morning.

hours-article =
    las
    la
hours-unit =
    h
    hs
    hrs
    horas
hours-from =
    desde
    de
hours-to =
    hasta
    a
hours-between =
    entre
hours-and =
    y
# the words after an hour that are minutes of it
hours-past =
    y media = 30
    y cuarto = 15
hours-am =
    de la manana
    por la manana
    en la manana
    de la madrugada
    por la madrugada
hours-pm =
    de la tarde
    por la tarde
    en la tarde
hours-night =
    de la noche
    por la noche
    en la noche

## Times

clock-plain =
    a las|la <h> en? punto? horas?
    sobre|tipo|como a? las|la <h>
    tipo|tipin <h>
    ^ las|la <h> de|por|en la tarde|noche|matina|madrugada
    ^ la una de|por la tarde|madrugada
    a eso de las|la <h>
    por ahi de las|la <h>
    alrededor|cerca|eso de las|la <h>
    como a|por las|la <h>
    <h> en punto
    pa|para las|la <h>
# these can also be about a count ("dolor después de las 10"): a time only where nothing was done or hurts
clock-weak =
    despues|luego|pasadas|antes de? las|la <h>
    a partir de las|la <h>
    hasta|desde las|la <h>
# no times: what was reached or how long it took
clock-not =
    pare|paro|acabe|termine|empece|deje en|a las|la|los? <h>
    hice|hecho|llevo|complete|solo|nomas <n> minutos|minuto|horas
    llegue a las|la|los <h>
    a las|la <n> repeticiones|veces|saltos|primeras|series
# two times: asked back
clock-range =
    a las|la <h> o|-|/|u a? las|la? <h>
    entre las <h> y las? <h>
    <h> o|a|-|y <h> am|pm|horas
clock-exact =
    a|sobre|tipo|hasta|desde|despues|antes de? las|la <h> :|.|y|h <m> horas?
    a eso de las|la <h> :|. <m>
    a|por ahi? de? las|la <h> :|. <m>
    <h> :|. <m> horas|h
    recuerda|recuerdame|recuerdeme|recordame|avisame|aviseme|despues|tarde .. <h> :|. <m>
# the same without a word before it counts as a time only with am or pm
clock-bare =
    <h> :|. <m>
    <h>
clock-half =
    a|sobre|tipo|de|hasta|desde|despues|antes? de? las|la <h> y media
    como|tipo|por|ahi|eso|pa|para a|de? las|la <h> y media
    a eso de las|la <h> y media
    <h> y media
clock-quarter =
    como|tipo|por|ahi|eso|pa|para a|de? las|la <h> y cuarto
    a eso de las|la <h> y cuarto
    a|sobre|tipo|hasta|desde|despues|antes? de? las|la <h> y cuarto
    <h> y cuarto
clock-less-quarter =
    como|tipo|por|ahi|eso|pa|para a|de? las|la <h> menos cuarto
    a eso de las|la <h> menos cuarto
    a|sobre|tipo|hasta|desde|despues|antes? de? las|la <h> menos cuarto
    <h> menos cuarto
    a? un? cuarto para|pa las|la <h>
clock-past =
    a? las|la <h> y <m>
    a? las|la <h> con <m> minutos?
clock-to =
    a? <m> minutos? para|pa las|la <h>
    a? faltando <m> para las|la <h>
clock-am-mark =
    am
    a . m
clock-pm-mark =
    pm
    p . m
clock-am =
    de|por|en la matina|madrugada
    de matina
    esta matina
    por la matina
clock-pm =
    de|por|en la tarde|noche|tardecita
    esta tarde|noche
    del mediodia|dia
    de la tarde|noche
# phrases for a time of day; the key is the time
at-0930 =
    despues de|del desayunar|desayuno
    tras|luego el|del desayuno
at-1100 =
    a media matina
    media matina
    mas tarde esta matina
at-1300 =
    antes de|del comer|almorzar|almuerzo|la
at-1200 =
    a|al|hacia|sobre el? mediodia
    al medio dia
    mediodia
at-1400 =
    despues de|del almorzar|almuerzo|lonche
    tras el almuerzo
    a la hora de|del comer|almuerzo|almorzar|la
at-1530 =
    despues de|del comer
    despues de la comida
    tras la comida
    en la sobremesa
at-1700 =
    por|en|a la|esta tarde|tardecita
    esta tarde|tardecita
    a media tarde
    mas tarde esta tarde
    despues de la|mi siesta
    despues de mi? siesta
    tras la siesta
at-1800 =
    despues de|del merendar
    despues de la merienda
    despues de tomar la? once|merienda|onces
at-1830 =
    despues de|del trabajar|trabajo
    cuando salga|salgo del|de trabajo|trabajar
    al salir del|de trabajo|trabajar
at-1930 =
    antes de|del la? cenar|cena
at-2000 =
    por|en|a la|esta noche|nochecita
    esta noche
    a la noche
at-2100 =
    despues de|del la? cenar|cena
    tras la cena
    antes de|del dormir|acostarme|acostarse|acostar|irme
    antes de ir a dormir|la
    al acostarme
span-minutes =
    en|dentro de? unos|como? <n> minutos
    en|dentro de? <n> $
    en <n> minutos mas
    dame|deme|denme|espera|espere|esperame|espereme|regaleme|regalame unos? <n> minutos? mas?
span-hours =
    en|dentro de? unas|como? <n> horas|hora|h
    dame|deme|espera|espere|esperame unas? <n> horas|hora
# without "en": a wait only where nothing was done
span-bare-minutes =
    <n> minutos mas? despues?
    <n> minuticos|minutitos
span-bare-hours =
    <n> horas mas? tarde|despues?
span-15 =
    en|dentro de? un? cuarto de hora
    un? cuarto de hora|horita
span-45 =
    en|dentro de? tres cuartos de hora
    tres cuartos de hora
span-30 =
    en|dentro de? como? media hora|horita
    media hora|horita
span-60 =
    en|dentro|como de? como? una hora|horita
    en|dentro una|un horita|hora
    deme|dame|espera|esperame una hora|horita
    ^ una hora|horita mas? tarde? $
    una hora mas? tarde
span-90 =
    en|dentro de? una? hora y media
    una? hora y media
    en|dentro de? <n> horas y media

## Commands

skip =
    esta no
    omitir
    omite
    omita
    omitela
    omitirla
    saltarla
    saltarmela
    saltar esta|este
    saltala
    saltela
    saltear
    salteala
    salteo
    me|nos la|lo|esta salto|salte|salteo
    me salto|salte|salteo la|lo|esta|este
    paso $
    paso de|por? esta|este
    esta|este paso
    esta vez paso|no
    no gracias
    no muchas gracias
    esta no gracias
    hoy no
    hoy paso
    hoy nopuedo
    nopuedo hoy
    nopuedo hacer|hacerla|hacerlo|hacerlas
    no la|lo|las voy|vamos a hacer
    no la|lo|las hago|hare
    noquiero hacer|hacerla|hacerlo|hacerlas
    no quiero hacer|hacerla|hacerlo|hacerlas|esta
    dejala|dejalo|dejelo|dejela asi? $
    la dejo pasar
    dejemos esta
    esta la dejo
    de esta paso
    ⏭
later =
    mas tarde
    mas tardecito
    luego
    lueguito
    despues
    despuesito
    al? rato
    al? ratito
    al? ratico
    en|dentro un|de|unos|otro|al? un? rato|ratito|ratico|momento|momentito|minuto|minutito|segundo|ratin|poco|instante
    de aqui a un|rato
    ahorita
    ahorita no
    ahora no
    ahora nopuedo
    nopuedo ahora|ahorita|todavia
    ahora mismo no|nopuedo
    todavia|aun no
    todavia|aun no las|los|la|lo? he? hice|hecho
    mas adelante
    recuerdame
    recuerdeme
    recordame
    recordarme
    recuerdamelo
    recuerdemelo
    recordamelo
    avisame
    aviseme
    avisarme
    posponer
    pospon
    posponga
    posponlo
    aplazar
    aplaza
    aplazalo
    espera
    espere
    esperame
    espereme
    esperate
    aguanta
    ocupada
    ocupado
    atareada
    liada
    liado
    un momento|momentito|segundo|minuto|minutito|segundito|ratito|rato|momentico|ratico
    dame|deme|denme un|unos rato|ratito|momento|minuto|minutos|segundo
    no estoy en casa
    estoy|ando|voy en|a|por|haciendo el|la|las|los? calle|compra|compras|super|supermercado|mercado|tienda|bus|coche|carro|camino|medico|misa|trabajo|reunion|banco|farmacia|peluqueria|cocinando
    estoy|ando fuera|afuera $
    cuando llegue|vuelva|termine|acabe|pueda|regrese|salga|despierte
    en cuanto llegue|vuelva|termine|acabe|pueda|regrese
    a la vuelta
    despues de mi|la|el|que|comer|cenar
    antes de
    otro|mas ratito|rato
    en un par de minutos|horas
    en unas|unos horas|minutos
    la proxima vez
    ⏰
undo =
    deshacer
    deshaz
    deshaga
    deshacelo
    deshazlo
    borrar
    borra
    borre
    borren
    borro
    borralo
    borrelo
    borrala
    borrarlo
    borrame
    elimina
    eliminar
    eliminalo
    elimine
    anular
    anula
    anulalo
    anule
    cancela|cancelar|cancele|quita|quitar|quite|saca eso|esa|lo|ese|la|el|ultimo|ultima
    cancelalo
    quitalo
    quitelo
    me? he? equivoque|equivocado|equivoco de|con|en|el? numero?
    me he equivocado
    me equivoque
    numero equivocado|incorrecto|malo
    fue|era|es un? error
    por error
    eso estaba|estuvo|era mal
    me confundi
    ↩
break =
    pausa
    una pausa
    quiero|necesito|tomo|tomare|tomarme|hacer|dame|deme|tomar|quisiera un|unos descanso|respiro|descansito
    descansar|descanso|descansare unos|un|una|por|hasta|<n> dias|dia|semana|semanas|dias
    unos|un|varios|<n> dias|dia libres|libre|descanso
    dias libres
    vacaciones
    viaje $
    de viaje
    un viaje
    viajando
    viajo
    viajamos
    viajar
    crucero
    me|nos voy|vamos|ire|iremos|marcho|largo .. fuera|viaje|vacaciones|playa|pueblo|campo|crucero|dias|semana|semanas|hasta|manana|lunes|martes|miercoles|jueves|viernes|sabado|domingo
    me|nos voy|vamos|marcho $
    salgo|salimos de|para|a viaje|vacaciones|ciudad|la
    salgo|salimos fuera|manana|el|hasta
    estoy|estare|estaremos|estamos|estaba|ando fuera .. hasta|dias|semana|ciudad|pais|casa|lunes|martes|miercoles|jueves|viernes|sabado|domingo
    ^ fuera hasta|por|desde|de|unos
    no estare|estaremos
    estare|estaremos|estoy|estamos fuera unos|unas|un|una|<n> dia|dias|semana|semanas
    vuelvo|volvere|regreso|regresare|volvemos|regresamos el|la|en|hasta|este? lunes|martes|miercoles|jueves|viernes|sabado|domingo|<n>|dia|semana
    estoy|estaba|ando|sigo|estuve|amaneci|me|estar|caido|cai|puse|siento|pongo|soy muy|bien|un|algo|medio|super|todavia|tan? poco|poquito? enferma|enfermo|malita|malito|pachucha|griposa|engripada|engripado|resfriada|resfriado|constipada|acatarrada|acatarrado
    ^ muy? enferma|enfermo|malita|malito|resfriada|resfriado|constipada
    ^ mala|malo $
    estoy|sigo|ando|puse|siento muy|bien? mala|malo
    me enferme
    tos y fiebre|gripe|gripa|catarro|calentura
    con|tengo|tuve|pille|cogi|agarre|pesque|dio|tener|pasando|peste|es la|el|un|una|mucha|mucho|muy|algo|de? gripe|gripa|gripazo|catarro|resfriado|resfrio|covid|fiebre|calentura|virus|infeccion|bronquitis|neumonia
    tengo|con gripe|gripa|fiebre|covid|catarro|calentura|temperatura
    ^ gripe|gripa|covid|fiebre|catarro|resfriado
    ^ desde|del el? lunes|martes|miercoles|jueves|viernes|sabado|domingo|hoy|manana al|hasta|a|por
    ^ hasta el|la|que? lunes|martes|miercoles|jueves|viernes|sabado|domingo|dia|<n>|semana|proxima|proximo
    ^ por? una? quincena $
    ^ por? <n> dia|dias|semana|semanas $
    ^ por? una semana $
    ^ por? unos|un|varios dias|dia $
    ^ para $
    ^ paren|pare|parar|parad|parate|basta|stop|alto|detener|detente|detenga por? favor? $
    por favor paren|pare|basta|para|detenganse
    deja|deje|dejen|dejad|paren|pare|para de escribirme|mandarme|mandar|enviar|enviarme|escribir|molestar|molestarme|insistir
    no me escriban|escribas|escriba|manden|mandes|mande|envien mas
    basta de mensajes
    no|noquiero quiero mas mensajes|avisos|recordatorios
    no|noquiero quiero recibir|que mas? mensajes|avisos
not-break =
    pausa|descanso para|del|de|por|a comer|almorzar|desayunar|cenar|cafe|almuerzo|trabajo|comida|la
    una pausa corta|corto|breve|rapida|larga
    despues|durante|tras|en|antes de|del|la|mi|el|mis|las? la|mi|el|mis|las? pausa|descanso|vacaciones|viaje
    sin|ninguna|ningun pausa|pausas|descanso|descansos|vacaciones|viaje
    no|noquiero quiero|necesito|hace|hagas|hay|tomo|tomare|estoy|estamos? ninguna|una|un|la|mi|en|de|falta? de? pausa|descanso|vacaciones|viaje|viajes
    no me|nos? voy|vamos|viajo|viajamos|ire|salgo|salimos .. viaje|fuera|vacaciones|playa|ningun
    no me|nos? voy|vamos|viajo|viajamos|ire
    ya no viajo|viajamos
    cancelar|cancela|cancele|cancelo|cancelamos|anula|anular|quita|quitar|quite el|la|mi|mis|las? pausa|descanso|viaje|vacaciones
    pausa|viaje|vacaciones|descanso se|fue? cancelo|cancelado|cancelada|cancelaron
    no|ya no? estoy|estaba|ando|me|siento siento? tan|muy|mala? enferma|enfermo|malita|malito|resfriada|resfriado
    no tengo|tuve gripe|gripa|fiebre|covid|catarro|calentura|temperatura|la|infeccion
    sin fiebre|gripe|covid|catarro|calentura
    marido|esposo|hijo|hija|nieto|nieta|mama|papa|perro|vecina|hermana|esposa|mujer esta|tiene|anda muy|con|la? enferma|enfermo|malito|malita|resfriado|gripe|gripa|fiebre|covid|catarro
    cuidando a mi
    de vuelta|regreso de|del viaje|vacaciones
    vuelvo en un
    volvi|regrese|llegue|vuelto|regresado de|del|las|mis? las|mis|mi|un? viaje|vacaciones
help =
    ayuda
    ayudame $
    ayudeme $
    que puedo|debo|tengo|hago|hay|puede|se hacer|que|escribir|decir|enviar|mandar|puede
    que hago $
    que tengo que hacer|escribir
    que escribo|pongo|digo
    no entiendo|entendi|comprendo|le
    como funciona|se|uso|usa|hago|lo|le|va
    comandos
    menu
    instrucciones
    opciones
    / ayuda|help
    ^ info|informacion $
    help

how-to =
    ^ como $
    ^ como es|era $
    como se hace|hacen
    como lo|la|los|las hago|hace
    como hago|hacer .. $
    como tengo|hay que hacer|hacerlo|hacerla|hacerlos|hacerlas
    como debo|puedo hacer|hacerlo|hacerla|hacerlos|hacerlas
    como hacerlo|hacerla|hacerlos|hacerlas
    como es|era el|la|este|esta ejercicio|movimiento|plancha
    muestreme|muestrame|ensename|enseneme|ensene
    ^ me muestra|ensena
    no se|recuerdo como $
    no se|recuerdo como se|lo|la|los|las hace|hacen|hago
    no se|recuerdo como es|era|hacer|hacerlo|hacerla|hacerlos|hacerlas|va|empezar
    no me acuerdo de? como $
    no me acuerdo de? como se|lo|la|los|las hace|hacen|hago
    no me acuerdo de? como es|era|hacer|hacerlo|hacerla|hacerlos|hacerlas|va|empezar
    se me olvido como $
    se me olvido como se|lo|la|los|las hace|hacen|hago
    se me olvido como es|era|hacer|hacerlo|hacerla|hacerlos|hacerlas|va|empezar
    ^ el|la|un|una? dibujo|foto|imagen $
    ver el|la dibujo|foto|imagen

## Pain

# body parts
part =
    cabeza cuello nuca cerviz cervicales hombro hombros brazo brazos codo codos muneca munecas mano manos dedo dedos pulgar
    pecho costilla costillas espalda columna lumbar lumbares cintura rinones lomo cadera caderas ingle ingles muslo muslos
    pierna piernas rodilla rodillas espinilla espinillas canilla canillas tibia pantorrilla pantorrillas gemelo gemelos
    batata tobillo tobillos pie pies talon talones planta empeine barriga estomago panza vientre abdomen tripa
    nalga nalgas gluteo gluteos trasero cola culo coxis coccix coccix rabadilla pelvis mandibula diente dientes muela muelas
    garganta oido oidos oreja orejas ojo ojos musculo musculos articulacion articulaciones hueso huesos cuadriceps
    isquiotibiales aquiles tendon tendones costado costados lado entrepierna juanete juanetes corva corvas cuerpo pubis
    hombrito rodillita piernita sacro vertebra vertebras menisco ligamento ciatico nervio omoplato clavicula seno senos
# soreness: logged; still a mention of pain
sore =
    agujetas doms adolorido adolorida adoloridos adoloridas dolorido dolorida doloridos doloridas
# every single word that mentions pain
ache =
    dolor dolores dolorcito dolorcitos dolorcillo dolorazo dolencia dolencias duele duelen dolio dolieron dolia dolian dolido doler dolerme dolerle
    doliendo duela duelan doloroso dolorosa dolorosos dolorosas dolera adolorido adolorida adoloridos adoloridas dolorido dolorida
    doloridos doloridas molestia molestias molestita molesta molestan molesto molestaba molestando molestaron molestado fastidia fastidio fastidiando fastidian
    punzada punzadas punzadita punza punzante pinchazo pinchazos pincha pinchan puntada puntadas puntadita tiron tirones tironcito
    tironeo calambre calambres calambrazo acalambrada acalambrado contractura contracturas contracturada contracturado esguince
    torcedura torci torcio desgarro desgarre hinchada hinchado hinchadas hinchados hinchazon hincho inflamada inflamado inflamadas inflamados
    inflamacion inflamo moreton moretones moraton moratones cardenal morado reventada reventado reventados reventadas chingue chingada sentida lastime lastimo lastimada lastimado lastima lastiman lastimando lesion lesiones lesione
    lesionada lesionado herida heridas herido ardor arde arden ardio ardiendo escuece escozor quema queman quemazon quemando
    hormigueo hormigueos hormiguea cosquilleo entumecida entumecido entumecidas entumecidos entumecimiento entumida entumido adormecida adormecido adormecidas adormecidos
    adormecimiento rigida rigido rigidez tiesa tieso tiesas agarrotada agarrotado agarrotadas agarrotados engarrotada
    entumidas tullida tullido auch ouch ayayay ayay jaqueca migrana cefalea ciatica lumbago lumbalgia tendinitis bursitis sangre sangra sangro sangrando
    sangrado fractura fracture fracturada fracturado fracturas quebre quebro quebradura fisura rompi rompio dislocada dislocado disloque luxacion
    luxe ampolla ampollas rozadura cojeo cojeando cojera cojea coja renqueo renqueando renguea rengueando renga agujetas doms insoportable
    latigazo latigazos chasquido crujido crujio tironazo resentida resentido resintio resiente resentida molida molido molidos molidas machacada
    machacado golpe golpes golpee golpeo golpeada golpeado golpazo magullada magulladura rasguno raspon raspe hospital ambulancia urgencias
    tirantez pellizco pellizca espasmo espasmos contraccion trabada trabado trabo enganchada enganchado clavada resiento agudiza empeora empeorado empeorando
    supura infectada infectado sarpullido agonia tortura sufriendo sufro achaque achaques pupa dolorosamente jodida jodido quejo quejando dolidos
    🤕 🩹 🚑 🩸
# verbs among them and among the falls: "sin caí" is no denial, "sin dolor" is
verb =
    duele duelen dolio dolieron dolia duela molesta molestan pincha punza arde arden quema cai caigo cayo tropece resbale torci torcio
    lastime golpee hincho rompi quebre sangra sangro fastidia crujio
pain =
    <ache>
    ay ay? ay?
    me|te|nos esta|estan|andan? matando|mata|matan
    me mata|matan
    ya nopuedo mas
    nopuedo mas
    no aguanto|soporto
    me|se jode|jodi|jodio|jodido
    me|le|nos? da|dan|dio|dando|dieron|esta|anda dando? lata|guerra|problema|problemas|molestia|tirones|un|una|bronca|punzadas|calambres|pinchazos|la
    me tira|tiran|jala|aprieta|pellizca|pega|punza|raspa|chasquea|cruje|truena
    tira|tiran|jala|aprieta el|la|los|las|un|mucho|mi <part>
    <part> me? esta|estan|anda|sigue|sigo|va|quedo|va|amanecio muy|bastante|un|algo|medio|super|toda|todo|bien? poco|poquito? mal|mala|malo|peor|fatal|horrible|tocada|tocado|rara|raro|sensible|cargada|cargado|cargadas|cargados|tensa|tenso|floja|flojo|pesada|pesado|pesadas|delicada|debil|debiles|dormida|dormido|roja|rojo|caliente|morada|morado|rota|roto|torcida|torcido|rigido|resentida|hecha|hecho|cansada|inestable
    <part> mala|malo|fatal|peor|rara|raro|morada|morado|rota|roto|torcida|torcido|cargada|cargado|dormida|dormido|dormidas|dormidos|quebrada|roja|debil
    mala|mal de|la|el|del? la|el? <part>
    tengo|siento el|la|los|las <part> muy|bastante|algo|un poco? sensible|sensibles|delicado|delicada|delicados|delicadas
    problema|problemas|lio|lata con|en|de la|el|mi|mis|las|los <part>
    dormida|dormido|dormidas|dormidos|rota|roto|rotas|rotos|morada|morado|quebrada|quebrado|torcida|torcido el|la|las|los|mi|un <part>
    se me durmio|durmieron|duerme|duermen|acalambro|engarroto|agarroto|hincha|hincho|trabo|traba|engancho|monto|salio|zafo|sale|disloco|quebro|rompio|inflamo|torcio|doblo|fue|va|paralizo|cargo|cargaron|abrio|pone|puso|contracturo .. <part>
    se me puso|pone|quedo dura|duro|mal|tiesa|tieso|mala|rigida|morada|roja
    me torci|torcio|doble|rompi|quebre|fracture|fisure|disloque|luxe|zafe|corte|raspe|queme|pille|pise|golpee|pegue|clave|aplaste|jorobe|fregue|jodi|lastime|lesione|hice|abri .. <part>
    casi|apenas no|ni me|se|le? .. <ache>
    <ache> en? la|el|las|los|mi|mis|un|una <part>
    <ache> de la|el|las|los|mi? <part>
    se me? durmio|durmieron|duerme|duermen
    me torci|quebre|fracture|lastime|lesione|desgarre
    me hice dano|mal|pupa|nana
    me he hecho dano
    me di un|con|contra|en
    me pegue un|con|en|contra
    mal gesto|movimiento
    me abri|abrio|parti la|el frente|ceja|labio|cara|menton
    pise mal
    mala pisada
    hice un mal
    algo .. trono|crujio|crac|sono|chasqueo|rompio|solto|salio|tiro|jalo
    senti|siento|note|noto|sentia un|una|algo|como un|una|que? crujido|chasquido|crac|tiron|jalon|clic|pop|raro|rara|mal|extrano|cuchillo|aguja|agujas|clavo|choque|toques|corriente
    me trono|crujio|cruje|truena
    como un|una|si cuchillo|cuchillada|aguja|clavo|clavaran|descarga|latigazo
    corrientazo|corrientazos
    descarga electrica
    toques electricos
    jalon
    nopuedo doblar|mover|levantar|girar|estirar|usar|flexionar|agacharme|sentarme|dormir|bajar|subir|apoyar
    me cuesta caminar|andar|doblar|mover|levantar|levantarme|agacharme|moverme|subir|bajar|apoyar
    tuve|tengo|he|hube que parar|detenerme|dejarlo|parado|tenido
    no me|se? siento|encuentro|ando|veo|sentia|senti|encontraba nada|muy|tan|del? todo? bien
    no esta|estan|estoy|anda|ando|va|van|amaneci muy|tan|del|nada? todo? bien
    no .. nada bien
    me|se? siento|encuentro|sentia|siente|puse|pongo|senti muy|bastante|un|algo|super|re? poco|poquito? mal|fatal|peor|rara|raro|debil|pesima|pesimo|floja
    ando|amaneci|estoy|sigo|quede muy|bastante|re|un|toda|todo|bien|medio? poco? mal|fatal|peor|pesima|pesimo|tocada|tocado|resentida|resentido|hecha|hecho|partida|baldada|baldado|descompuesta|descompuesto|coja|cojo|renga|rengo|chueca
    hecha|hecho polvo|mierda|pedazos|trizas|pomada
    a la miseria
    fuera de lugar
    va|voy|esta|sigue|ha|se|fue|anda a|yendo|puesto|poniendo|pone|puso? peor
    peor que antes|ayer|nunca|siempre
    mucho peor
    sobre esfuerzo
    sobreesfuerzo
    me pase de|con|haciendo
    me sobre esforce
    me excedi
    hice demasiado
    escalofrios
    en carne viva
    sala de urgencias
    nudo en
    se resiente
    sin aliento
    me da punzadas|pinchazos|tirones|calambres|toques
    me rechina|chirria
    algo|cosa en la|el|mi <part>
    me late|palpita|bombea el|la|los|las <part>
    <part> me? falla|fallo|flaquea|flaqueo|cede|cedio|cruje|crujio|trona|truena|trono|chasquea|late|palpita|tiembla|tiembran|tiemblan|hormiguea|protesta|reclama|jala|tira|grita
    hueso roto
    fractura de
    huesos rotos
    temblor|temblores
    moretones
    chichon
    por poco me mato
    como lija
    con hielo
    me|puse|puesto|tome|tomar|tomando .. calmante|calmantes|ibuprofeno|paracetamol|analgesico|analgesicos|pomada|arnica
    escuche|oi|escucho|oigo|sono|hizo .. crac|crujido|chasquido|clic|chasquear|crujir|tronar
    talon|pie|pies|pierna|piernas|planta|brazo|mano|dedo|ojo|oreja|oido .. como si
    como si pisara|pisaran|clavaran|metieran|quemaran|cortaran|apretaran|tuviera
    torticolis
    camino|caminar|camina|caminando|ando|andar raro|rara|chueca|chueco|mal|torcida|torcido|doblada|doblado
    camino|caminar|ando|andar como pato|patito|borracha|borracho|anciana|robot
calm-pain =
    sin ningun problema
    dolor no|ninguno|cero|nada|0
    dolor : no|ninguno|nada|cero
    ^ nada me duele|duelen|molesta|dolio
    ya|que nada me duele
    se me? quito|paso|fue todo? el dolor $
    molestia|molestias de|por escribir|molestarle|la
    perdon|disculpe|disculpa|perdona|siento|lamento por? la|las molestia|molestias|molestarle|molestar|molesto
    no es|hay|sera ninguna? molestia
    no me molesta hacerlo|hacerlas|nada|hacer|que
    presion arterial|alta|baja
    sangre fria
    analisis|prueba|examen de sangre
    que lastima
    lastima que
    una|es lastima
    corte de|el pelo|luz
    de golpe y
    golpe de suerte|estado|vista
    quema|quemar|quemando|quemo calorias|grasa
    <part> ya? esta|estan|va|anda muy? bien|mejor|perfecto|perfecta
    me tira el pelo
    me pase por|a
    ay que|si|no|dios|bueno|mira|perdon|gracias|ya|pues|hija|mija|doctora|lindo $
    ay que|bueno|perdon|gracias|doctora|mira|pues|hija
    me pegue un bano|duchazo|susto
    me di una ducha|un|cuenta
    me di un bano|gusto|paseo
    me di cuenta
    morado|rojo oscuro|claro
    sin dolor no hay
    que no duela
    no empeora
    dolores murio
    me mata|matan esperar|espera|la|el|tanta|tener|estar? espera|esperar|curiosidad|intriga|calor|frio|aburrimiento

## Falls

fall =
    levantar|levantarme|levanto|levantaron|recoger|recogerme|recogio|recogieron me? del suelo|piso
    caida
    caidas
    cai
    caigo
    caia
    caido
    caidos
    caerme
    caerse
    caer
    cayo
    cayendo
    caere
    caemos
    caimos
    tropece
    tropezon
    tropezones
    tropiezo
    tropiezos
    tropezar
    tropezado
    tropezando
    tropeze
    trastabille
    trastabillo
    traspie
    traspies
    resbale
    resbalo
    resbalon
    resbalones
    resbalado
    resbalar
    resbalando
    patine
    patinazo
    derrumbe
    derrape
    desplome
    desplomo
    rode por|en|escaleras|las
    porrazo
    batacazo
    castanazo
    trompazo
    trompada
    costalazo
    ranazo
    azoton
    culazo
    culetazo
    guarrazo
    trastazo
    trancazo
    lenazo
    lenazo
    hostiazo
    sentonazo
    senton
    sentones
    golpazo
    zapotazo
    azote
    me azote
    me la pegue
    me di una|un|tremenda|tremendo hostia|leche|golpe|castana|galleta|torta|pina|pina|trompada|golpazo
    me pegue un|una|tremendo buen|buena|tremendo? golpe|golpazo|palo|pina|torta|leche|hostia|trastazo
    me saque la|el chucha|mugre|cresta|mugre
    me fui de|al|contra|para|pa bruces|boca|espaldas|espalda|cabeza|lado|suelo|piso|culo|nalgas|hocico|cara|costado|rodillas|atras|el|la
    me vine|fui abajo
    de bruces
    di|dado|dio|dar|fui|acabe|termine|quede|quedo|ido|fue|fuimos a|en|con|contra|al|por|de|tirada|tirado? dar? a|en|con|contra|al|mis? el|huesos? en? el? suelo|piso
    en|al suelo|piso .. tirada|tirado
    aterrice
    perdi|pierdo|perdio el equilibrio|balance|pie
    se me fue|fueron|doblo|doblaron|afloja|aflojo|aflojaron|vencio|vencieron|fallo|fallaron la|las|el|los pierna|piernas|rodilla|rodillas|pie|pies|tobillo|cadera|equilibrio
    me fallo|fallaron|flaquearon|flaqueo|cedieron|cedio la|las|el pierna|piernas|rodilla|rodillas|tobillo|cadera
    rodilla|pierna|cadera|tobillo|piernas|rodillas me? fallo|cedio|fallaron|flaqueo|vencio
    di|pise un|en|dado mal|falso|el paso|vacio
    paso en falso
    me|nos tiro|empujo|tumbo|arrastro|derribo|volteo|boto el|la|mi|un|una perro|perra|nieto|gato|bici|moto|carro|coche|senor|senora|gente|hombre|chico|nino|puerta
    me fui de la silla|cama
    me baje|tire|salte mal
    me voltee
    me atropello|atropellaron
    perdi un escalon
    me salte un escalon
    me comi|trague el suelo|piso|escalon
    de cabeza al
    me estrelle
    me escurri
    me fui redonda
    tumbe
    casi|poco me|nos voy|vamos al|contra|de|para|por
    me voy|iba al suelo|piso
    caidita
    caiditas
    bese|mordi|trague el suelo|piso|polvo|pavimento
    perro|perra|gato|nieto|nieta|bici|moto|carro|coche|viento|bus|autobus|metro|hombre|senora|puerta me tiro|tumbo|boto|derribo|volteo|empujo|arrastro|jalo
    sali|salio|salir volando|disparada|disparado|despedida|despedido|rodando
    voltereta|volteretas|maroma|maromas
    hecha|hecho un? ovillo
    y al suelo|piso
    patas arriba
calm-fall =
    caida|caidas de|del? talon|talones|sol|pelo|cabello|tarde|luz|internet|tren|noche|hojas|temperatura|temperaturas|precios|bolsa
    se me? cayo|cayeron|caia|callo|cae|caen el|la|un|una|los|las|mi|todo telefono|movil|celular|vaso|plato|taza|cuchara|libro|lapiz|bolso|olla|pelo|cabello|sistema|internet|luz|servidor|llamada|mensaje|diente|muela|tapa|gafas|lentes|bolsa|comida|cafe|agua|bot|baba|ropa|llaves|control
    me|te|le|nos cae|caia|cayo|caen|cayeron|caiste muy|re|super|tan|genial? bien|mal|gordo|genial|simpatica|simpatico
    me|te cae|cayo pesada|pesado|pesada la|el comida|cena
    cae|cayo|cayendo|caia la noche|tarde|lluvia|nieve|granizo|agua|aguacero
    caigo|caia|muero|cai|caer|caen de|del|muerta|muerto sueno|cansancio|risa|gusto|cansada
    cai|caigo|caimos|cayo|caer en|de la? cuenta|dormida|dormido|sueno|bien|mal
    cai|quede|caigo|caer|cayo|cai dormida|dormido|rendida|rendido|frita|enferma|enfermo|muerta|muerto
    cai|caido en cama|con gripe|gripa|fiebre
    a la caida de la
    clase|taller|prevencion|grupo|riesgo de caidas
    dejar caer
    dejandome|dejando|dejo|dejarme caer los|el|mis|sobre? talones|talon
    se cayo|callo el|la? internet|luz|sistema|red|senal|conexion|wifi
    ya caigo
    patine|patinar|patinaje sobre|en hielo|ruedas|linea
    tumbe|tumbo en la|el cama|sofa|sillon|un
    caidos del cielo
    hojas caidas
    en caida libre
    cayo|callo un|una|unos|buen|buena|tremendo|tremenda? aguacero|tormenta|chaparron|granizo|nevada|helada|lluvia|diluvio
    caigo|caia|cai de hambre

## Warning signs. The words are gathered from ordinary speech (ours).

weak =
    debil debiles debilidad sinfuerza dormido dormida dormidos dormidas durmio durmieron adormecido adormecida adormecidos adormecidas adormecimiento entumecido
    entumecida entumecidos entumecidas entumida entumido entumidas entumecimiento hormigueo hormigueos hormiguea flojo floja flojos flojas flojera
    muerto muerta muertos muertas paralizado paralizada paralizo paralizadas paralisis acorchado acorchada acorchadas insensible cosquilleo tonta tonto
# how a heart goes that does not go as it should
beating =
    acelerado acelera aceleracion acelero rapido brincos brinca brincando saltos salta saltado desbocado mil galope galopa galopando
    loco vuelco vuelcos fuerte sale irregular aleteo aletea palpita palpitando disparado ritmo latidos late retumba golpetea
breathe =
    respirar respiro respiracion aire aliento
sign-chest =
    pecho .. <ache>
    <ache> .. pecho
    pecho .. apretado|apretada|aprieta|oprimido|oprime|oprimida|opresion|presion|pesado|pesa|peso|pesadez|ardor|quemazon|tenso|raro|cerrado|cierra|faja|banda|elefante|losa|piedra|yunque
    apretado|aprieta|apriete|apreton|oprime|opresion|presion|pesadez|peso|pesa|cierra|ardor|quemazon|estruja|aplasta|faja|banda|elefante|losa|nudo|agobio .. pecho
    opresion toracica
    dolor toracico
    infarto
    infartada
    infartado
    ataque al|cardiaco|de corazon|cardiaco?
    ataque cardiaco
    angina
    angina de pecho
    preinfarto
    corazon .. <ache>
    <ache> .. el|mi|al corazon
    <ache> .. brazo izquierdo
    brazo izquierdo .. <ache>
    <ache> .. brazo y|e|hasta? la? mandibula
    <ache> .. mandibula .. brazo
    <ache> .. corre|sube|va|irradia|pasa|baja .. brazo|mandibula
calm-chest =
    me|lo|la tome|tomo|tomes a pecho
    dar|doy|di el? pecho
sign-faint =
    desmaye
    desmayo
    desmayos
    desmayada
    desmayado
    desmayar
    desmayarme
    desmaya
    desmallo
    desmalle
    desmallar
    desvaneci
    desvanecimiento
    desvanecer
    desvanezco
    desvanecerme
    perdi|perdio|pierdo|perder|perdiendo el|la? conocimiento|conciencia|consciencia|sentido
    perdida de conocimiento|conciencia|consciencia
    sin conocimiento|sentido
    inconsciente
    sincope
    lipotimia
    vahido
    vahidos
    baido
    patatus
    soponcio
    telele
    yuyu
    se me nublo|nubla|fue|va|oscurecio|apago|borro la|el|todo? vista|vision|luz|mundo|todo|luces
    se me puso|pone|hizo|volvio|fue|ve todo|la|el? vista|todo? negro|oscuro|blanco|borroso
    todo|vista .. negro
    me fui redonda|redondo
    recobre el conocimiento|sentido
    me desperte en el suelo|piso
calm-faint =
    me desmayo|desmaye de|del risa|emocion|gusto
sign-breath =
    nopuedo .. respirar|aire|aliento
    nopuedo coger|tomar|agarrar|jalar|recuperar el? aire|aliento
    respirar|respiro|respiracion .. cuesta|costo|dificil|dificultad|mal|apenas|trabajo|duele|nopuedo|entrecortada|agitada|fatiga|rapida|corta|ahoga
    cuesta|cuestan|costaba|costo|dificil|dificultad|dificultades|dificulta|trabajo|duro|problemas|apenas .. respirar|respiro|respirando|respiracion
    falta|faltaba|falto|faltan|faltando|corta|corto .. aire|aliento|respiracion|oxigeno
    me quedo|quede|quedaba|quedado|deja|siento|encuentro sin aire|aliento|respiracion|resuello
    sin aire
    sin resuello
    corta|corto de aire|aliento
    falta de aire|aliento|respiracion
    poco|poquito|mas aire
    no me? entra|llega|pasa|alcanza|sale|da el? aire
    no respiro
    no respira
    no respiraba
    respiro mal|fatal
    ahogo
    ahogos
    ahogando
    ahogaba
    ahogue
    ahoga
    ahogada
    ahogado
    asfixia
    asfixio
    asfixiando
    asfixie
    sofocada
    sofocado
    sofocando
    me|se sofoco|sofoque|sofoca
    jadeo
    jadeando
    jadeante
    disnea
    pito|pitos|silbido|silbidos|pitando en el? pecho|respirar
    se me va|corta|corto|acaba el|la aire|aliento|respiracion
    agitada|agitado|agitacion al? respirar?
    no .. recupero|recobro|agarro|tomo|cojo|jalo|encuentro aire|aliento|el aire|aliento
calm-breath =
    al aire libre
    aire acondicionado
    el|un poco de aire fresco
    me ahogo en un
    ejercicios? de respiracion
    un|dame|deme respiro
# a part of the body that is spoken of is a mention of pain, unless all is said to be well with it
# or the clause is a plain count
limb =
    rodilla rodillas cadera caderas tobillo tobillos ingle muslo muslos espinilla espinillas canilla canillas
    pantorrilla pantorrillas gemelo gemelos hombro hombros codo codos muneca munecas cuello nuca columna costilla
    costillas coxis coccix nalga nalgas gluteo gluteos aquiles pecho mandibula pelvis isquiotibiales barriga
    estomago musculo musculos articulacion articulaciones lumbar lumbares cintura rinones corva corvas lomo juanete
    juanetes cervicales rabadilla entrepierna vertebra vertebras menisco ciatico
body =
    <limb>
    mi|mis|mia <part>
    la|una|las|los|el pierna|pierna|piernas|espalda|cabeza|mano|manos|brazo|brazos|ojo|ojos|dedo|dedos|planta|empeine
    <part> derecha|izquierda|derecho|izquierdo|derechas|izquierdas
    la espalda|cabeza
    el|un brazo
calm-body =
    <part> boca abajo
    subir|levantar|elevar|elevacion|elevaciones|levantando|subiendo|levantamientos|levante|subi|subidas|doblar|doblando|estirar|estirando|mover|moviendo de|la|el|las|los|mi|mis? <part>
    con|por la|el|una|cada pierna|pie|talon derecha|izquierda|derecho|izquierdo
    de cabeza
    a mano
    la|las|mi|mis mano|manos en|sobre|contra|apoyada|apoyadas|al
    con la mano
    echar|echarme|eche una|la? mano
    me da la espalda
    ojo con|que|de
    gemelos nietos
    mis nietos
    a pie
    al|del lado
    mi lado
    de mi lado
    a la mano
    a pecho descubierto
    al pie de la letra
well =
    bien buena perfecta perfecto mejor mejorada mejorando genial contenta contento normal
    estupenda estupendo fenomenal tranquila ok okay problema problemas excelente suelta sueltas sueltita divina

sign-one-side-weak =
    un|medio lado|costado|cuerpo .. <weak>
    media cara .. <weak>
    lado izquierdo|derecho .. <weak>
    <weak> .. un|medio|todo|mi|el lado|costado
    <weak> .. lado izquierdo|derecho
    <weak> .. medio cuerpo
    <weak> .. media cara
    <weak> .. un|una|el|la|mi brazo|mano
    <weak> .. pierna izquierda|derecha
    brazo|mano|manos|brazos .. <weak>
    pierna izquierda|derecha .. <weak>
    una pierna .. <weak>
    nopuedo mover|levantar|sentir|usar|alzar .. brazo|mano|pierna|lado|pie
    nopuedo mover medio|media|un
    no siento un|una|el|la|mi|medio|media|bien? brazo|mano|pierna|lado|cuerpo|cara|costado
    no muevo un|una|el|la|mi|medio|media brazo|mano|pierna|lado|cuerpo|cara
    brazo|mano|pierna no se? me? mueve|responde|obedece|levanta
    derrame
    derrame cerebral
    ictus
    embolia
    apoplejia
    acv
    hemiplejia
    hemiparesia
    trombosis cerebral
    paralisis
    infarto cerebral
    aire en la cara
    mano|brazo|pierna .. no me? hace|obedece|responde caso?
calm-one-side-weak =
    derrame|derramo|derrames el|la|un|de|sobre cafe|agua|leche|aceite|vaso
    una|la mano tonta
    me quede|quede dormida|dormido
sign-head-knock =
    golpe|golpee|golpeo|golpeado|golpeada|golpazo|golpes|pegue|pego|di|dado|dio|choque|choco|porrazo|trompazo|cabezazo|estrelle|parti|abri|rompi|descalabre|lastime|hice|corte|herida|brecha|bulto|chichon|raspe .. cabeza|frente|nuca|craneo|coco|sien
    cabeza .. golpe|golpee|golpeo|pegue|pego|contra|sangra|sangrando|sangre|choco|chichon|brecha|herida|abri|abrio|rompi
    sangre|sangra|sangrando .. cabeza|frente|nuca
    con la cabeza en|contra
    cabezazo
    chichon
    conmocion
    conmocionada
    traumatismo craneal|craneo|craneoencefalico
    descalabre
    descalabrada
    me descalabre
    me abri la|el frente|ceja|cabeza|craneo
calm-head-knock =
    golpe|golpes de calor|suerte
    doy|di cuenta .. cabeza
    de cabeza
sign-no-weight =
    nopuedo .. apoyar|apoyarme|pisar|cargar|sostener|sostenerme|caminar|andar|aguantar .. peso|pie|pierna|cadera|rodilla|tobillo|en|sobre
    nopuedo ni? apoyar|apoyarla|apoyarlo|pisar|caminar|andar|sostenerme
    nopuedo ni? poner|cargar|aguantar|soportar el|mi|la|ningun? peso|pie|pierna
    nopuedo estar|tenerme|mantenerme|quedarme|ponerme en|de|parada|parado pie?
    nopuedo estar parada|parado
    nopuedo pararme|ponerme en|sobre|de la|el|una|esa|pie
    nopuedo dar un|ni paso
    apenas|casi|ya|ni puedo|no|nopuedo caminar|andar|apoyar|pisar|camino|ando|apoyo|piso|caminar
    no apoyo|piso|camino
    no aguanto|aguanta|soporto apoyar|pisar|apoyarla|apoyarlo|caminar|andar
    no me|la|le|lo? sostiene|sostienen|aguanta|aguantan|sujeta|sujetan|soporta|soportan la|las|el|mi|mis pierna|piernas|rodilla|cadera|tobillo|pie
    pierna|piernas|cadera|rodilla|tobillo|pie no me|la|se? sostiene|sostienen|aguanta|aguantan|sujeta|sujetan|soporta
    pierna .. se? ve|quedo|quedo|esta|parece mas? corta|torcida|chueca|girada|deformada|deforme
    me duele demasiado para|al caminar|andar|apoyar|pisar
calm-no-weight =
    nopuedo caminar|andar hoy|porque|ahora|lejos|mas|mucho|tanto|afuera|con este|con esta|tan|al|por
    no camino hoy|mucho|tanto|lejos
    no aguanto|aguanta mas|el|esto|este|la calor|frio|gente|ruido
    no aguanta mas
    no ando|camino con|en
sign-back-weak-legs =
    espalda|lumbar|columna|cintura .. piernas|pierna .. <weak>
    espalda|lumbar|columna|cintura .. <weak> .. piernas|pierna
    piernas|pierna .. <weak> .. espalda|columna|cintura
    <weak> .. piernas|pierna .. espalda|columna|cintura
    dormido|dormida|dormidas|dormidos|adormecida|adormecido|adormecidas|entumecida|entumecido|entumecidas|entumida|hormigueo|acorchada|acorchado|insensible|durmio|anestesiada .. entrepierna|nalgas|genitales|ano|trasero|culo|ingles|partes|vagina|pubis|cola|silla
    entrepierna|nalgas|genitales|ano|trasero|culo|partes|vagina|cola .. dormido|dormida|dormidas|dormidos|adormecida|adormecido|adormecidas|entumecida|entumecido|entumecidas|entumida|hormigueo|acorchada|insensible|durmio
    entre las piernas .. dormido|dormida|adormecida|entumecida|entumecido|hormigueo|acorchada|durmio|siento
    anestesia en silla
    no siento las|mis|nada|ninguna|los|ambas|bien? de|las|mis|en? las|mis|la? piernas|entrepierna|pies|nalgas|abajo
    no me siento las piernas
    nopuedo mover|sentir las|mis|ninguna|ambas piernas
    no muevo las|mis|ninguna piernas
    piernas no me|se? mueven|responden|funcionan
    piernas .. paralizadas|paralizaron|dormidas|durmieron|adormecidas|entumecidas|entumieron|muertas
    dormidas|adormecidas|entumecidas|paralizadas|durmieron|entumieron las|mis|ambas|dos piernas
    las dos piernas .. <weak>
    nopuedo orinar|mear|evacuar|defecar|obrar|cagar
    nopuedo ir al bano
    nopuedo hacer pis|pipi|chis|caca|popo|del
    nopuedo controlar|aguantar|retener|contener .. orina|pis|pipi|vejiga|esfinteres|esfinter|caca|heces|intestino|popo
    no controlo|retengo|contengo la|el|los|mi|mis orina|pis|pipi|vejiga|esfinteres|esfinter|caca|heces|intestino|popo
    perdi|pierdo|perdido|perdiendo|perdida|sin el|del|de? control .. vejiga|orina|esfinteres|esfinter|intestino|intestinos|heces
    no me|ya|sale sale? orinar|orino|pis|orina
    no orino
    espalda|cintura|lumbar .. vejiga|orinar|orina|orine|orino|pis|pipi|caca|heces|esfinteres|encima
    vejiga|orinar|orina|orino|pis|pipi|caca|heces|esfinteres .. espalda|cintura|lumbar
    problema|problemas .. vejiga|esfinteres|intestino
    vejiga|esfinteres|intestino .. problema|problemas|mal|falla|raro|nuevo
    me hice|hago|he|cague|cago|ensucie|hecho caca|popo|del|cague
    me cague|zurre|ensucie
    se me escapo|escapa|sale|salio la|el|las? caca|popo|heces|excremento
    incontinencia fecal
    cola de caballo
    no .. siento .. entre las piernas
    no|nopuedo .. aguanto|aguanta|aguantar|retengo|controlo|contengo .. orina|orinas|pis|pipi .. piernas
    piernas .. no|nopuedo .. aguanto|aguanta|aguantar|retengo|controlo .. orina|pis|pipi
sign-sudden-back =
    derepente .. espalda|lumbar|columna|cintura|rinones|lomo
    espalda|lumbar|columna|cintura|rinones|lomo .. derepente
    me quede|quede|dejo|he|estoy clavada|clavado|enganchada|enganchado|trabada|trabado|quedado|doblada|doblado|tiesa|tieso de|del|la|en|clavada? la? espalda|cintura|lumbago?
    se me trabo|engancho|fue|bloqueo|quedo|partio|rompio|abrio|cerro|clavo|trono|cruzo la|el|mi espalda|cintura|columna|lumbar|lomo
    lumbago
    espalda|columna|cintura .. crujido|crujio|crac|chasquido|trono|latigazo|bloqueo|trabo|chasqueo|bloqueada|trabada
    crujido|crujio|crac|chasquido|trono|truena|latigazo|chasqueo|bloqueo|tronido .. espalda|columna|cintura|lumbar
    nuevo|nueva .. <ache> .. espalda|columna|cintura|lumbar
    <ache> nuevo|nueva .. espalda|columna|cintura|lumbar
    <ache> .. espalda|columna|cintura|lumbar .. nuevo|nueva
    espalda|cintura|columna .. <ache> .. nuevo|nueva
    me dio un|una|el? tiron|latigazo|lumbago|calambre|punzada|pinchazo|jalon|crac .. espalda|cintura|lumbar|columna
calm-sudden-back =
    me|le da la espalda
sign-groin-thigh =
    ingle
    las|mis|ambas|dos ingles
    <bite> .. ingles
    <bite> .. muslo|muslos
    muslo|muslos .. <bite>
    <bite> .. entrepierna
    entrepierna .. <bite>
calm-groin-thigh =
    hablo|hablas|hablan|habla|en|de|clase|clases ingles
# the pain words that are more than plain soreness
bite =
    dolor dolores dolorcito duele duelen dolio dolieron dolia doliendo doler duela molesta molestan molestia molestias molestando punzada punzadas pinchazo
    pinchazos puntada puntadas tiron tirones calambre calambres hinchado hinchada hinchados arde ardor quema quemazon punzante latigazo
    fastidia pincha punza jala tira jalon
sign-foot-shin-spot =
    punto|puntito|lugar|sitio|zona|huesito .. pie|pies|espinilla|espinillas|canilla|canillas|tibia|talon|tobillo|dedo|empeine|metatarso
    pie|pies|espinilla|espinillas|canilla|canillas|tibia|talon|tobillo|empeine .. punto|puntito|mismo
    pie|pies|espinilla|espinillas|canilla|canillas|tibia|talon|dedo|empeine|tobillo .. <ache> .. mas|peor|aumenta|empeora .. cada|vez|tanda|salto|dia|medida
    <ache> .. pie|pies|espinilla|espinillas|canilla|canillas|tibia|talon|empeine .. mas|peor|aumenta|empeora .. cada|vez|tanda|salto|dia|medida
    cada vez mas|peor .. <ache> .. pie|pies|espinilla|canilla|tibia|talon|empeine
    cada vez .. <ache> mas .. pie|pies|espinilla|canilla|tibia|talon|empeine
    <ache> .. cada .. mas .. pie|pies|espinilla|canilla|tibia|talon|empeine
    pie|espinilla|canilla|tibia|talon|empeine .. cada vez .. <ache>
    pie|espinilla|canilla|tibia|talon|empeine .. cada vez mas|peor
    <ache> .. mas cada|con vez|salto|tanda|cada .. pie|pies|espinilla|canilla|tibia|talon|empeine
    fractura|fisura por|de|del estres|sobrecarga
calm-foot-shin-spot =
    a punto de
    en punto
    marcha en el|mi? sitio|lugar
    en el|mi sitio|lugar
    a|de|en pie
sign-calf =
    pantorrilla|pantorrillas|gemelo|gemelos|batata|batatas .. hinchada|hinchado|hinchadas|hinchados|hincho|hinchazon|caliente|calientes|roja|rojo|rojas|inflamada|inflamado|inflamo|dura|duro|bulto|gorda|grande|<bite>
    hinchada|hinchado|hinchadas|hinchazon|caliente|roja|rojo|inflamada|inflamado|hincho|inflamo|bulto|<bite> .. pantorrilla|pantorrillas|gemelo|gemelos|batata
    pierna .. hinchada|hincho|hinchando|hinchazon|inflamada|inflamo
    hinchada|hinchadas|hinchazon|hincho|inflamada|inflamo|hinchado .. pierna|piernas
    piernas .. hinchadas|hincharon|hinchan
    coagulo
    coagulos
    trombo
    trombos
    trombosis
    flebitis
    tvp
calm-calf =
    trombosis cerebral
    gemelos nietos
sign-dizzy =
    mareo
    mareos
    mareito
    mareada
    mareado
    mareadita
    maree
    marea
    mareaba
    mareando
    marean
    mareaste
    marear
    mareame
    mareillo
    vertigo
    vertigos
    todo|cabeza|habitacion|cuarto|casa|pieza|mundo|sala|suelo|piso .. vueltas|gira|girando|mueve
    me|da|dan|dio|daba vueltas todo|la|el cabeza|cuarto|mundo|casa|habitacion?
    se me va|iba|fue|anda la cabeza
    corazon|pulso|cuore .. <beating>
    acelerado|acelera|acelero|disparado|brinca|palpita|late|latia .. corazon|pulso
    palpitaciones
    palpitacion
    palpitando
    taquicardia
    taquicardias
    arritmia
    arritmias
    inestable
    inestabilidad
    aturdida
    aturdido
    atontada
    atontado
    atarantada
    atarantado
    desorientada
    desorientado
    desequilibrio
    desequilibrada
    tambaleo
    tambaleando
    tambaleandome
    tambaleante
    cabeza ligera|liviana|flotando|ida|hueca
    me voy|iba de|para|pa lado|lados|los
    piso|suelo .. mueve|hunde
    bajon de tension|presion|azucar
    se me baja|bajo|subio|sube la presion|tension|azucar
    bajada de tension|azucar
    😵
    🥴
    salta|brinca|retumba|vuelco|aletea|desboca|golpea .. corazon
calm-dizzy =
    marea alta|baja
    no me marees
    musica a|todo
    dar|di|doy|dando|dimos|dar una|unas|<n> vuelta|vueltas
    el corazon contento
sign-leak =
    orina
    orine
    orino
    orinar
    orinarme
    orinaba
    orine encima
    orin
    orines
    pipi
    pis
    chis
    meo
    mee
    mearme
    meaba
    meada
    me hago|hice|hacia|hecho encima|pis|pipi|chis
    se me sale|salio|salen|salian|escapa|escapo|escapan|escaparon|escapado|sale|va|fue|salido un|una|el|la|unas|unos|algo|poco|gotas|gotitas|chorro|chorrito .. orina|pis|pipi|orin|gota|gotas|gotita|gotitas|chorrito|chorro|chis|poquito|poco
    se me escapo|escapa|escapan|escaparon|escapado|escapaba
    escape|escapes|escapecito de orina|pis|pipi
    perdida|perdidas de|pequena|pequenas|leve|leves? orina|pis|gotas
    perdidas
    goteo
    gotitas
    gotas .. saltar|salto|braga|pantalon
    moje|mojo|mojada|mojado|mojando el|la|los|las|mi|un|me|poco|poquito? braga|bragas|calzon|calzones|pantalon|pantalones|ropa|calzones|pantaleta|bombacha|ropita|interior|compresa|toalla
    me moje|mojo|mojado|mojaba
    me he mojado
    incontinencia
    incontinente
    no aguanto|aguante|llego|llegue la|el|las|al|a|tiempo|ganas? orina|pis|pipi|bano|ganas
    nopuedo aguantar|aguantarme|retener el|la|las? pis|orina|pipi|ganas
    accidente .. saltar|salto|saltando|brincar
    pequeno accidente
    peso|bulto|pesadez|arrastre|bola|algo .. abajo|vagina|alla
calm-leak =
    no se me ha? escapa|escapo|escapado|sale|salio|salido|escapan ningun|ninguna? de|la|el? orina|pis|pipi|gota|gotas
    se me escapo|escapa|escapaba|escaparon|escapado el|la|un|una|mi|los|las perro|gato|gata|perra|micro|bus|autobus|tren|camion|colectivo|tiempo|risa|hora|nieto|idea|detalle|metro
    se me escapo que|decir|contar|avisar|de
    analisis|infeccion|muestra de orina
    me moje con|la|por|bajo lluvia|pelo|el|la
    gotas para|en|de los? ojos|nariz|rocio|colirio
    perdidas de tiempo|dinero
    algo .. tirar|echar abajo
sign-eye =
    destellos
    destello
    fogonazos
    fogonazo
    relampagos en|de los|mi|el|luz? ojo|ojos|vista?
    moscas volantes|flotantes|flotando
    veo|viendo|vi|veia|ver|aparecen|tengo|ando .. moscas|mosquitas|manchas|mancha|lucecitas|luces|estrellas|estrellitas|chispas|chiribitas|puntos|puntitos|sombra|sombras|telaranas|telarana|rayos|flashes|destellos|lineas|hilos
    moscas .. ojo|ojos|vista
    cortina|velo|sombra|telon|mancha|manchas|punto|puntos|telarana|telaranas .. ojo|ojos|vista|vision
    ojo|ojos|vista|vision .. cortina|velo|sombra|sombras|telon|mancha|manchas|negro|negra|borroso|borrosa|nublado|nublada|nubla|nublo|doble|ciego|oscuro|oscura|perdi|perdida|flashes|puntos|relampagos|luces
    veo|viendo|vi|veia .. borroso|borrosa|doble|nublado|nubloso|oscuro|negro|mal|raro
    vision doble|borrosa|nublada
    vista nublada|borrosa
    perdi|pierdo|perdiendo|perdido la|el|un|de|mucha? vista|vision|ojo
    perdida de vision|vista
    no veo de|con|por|nada|bien del|un|el|nada|ojo|izquierdo|derecho
    no veo $
    no veo bien
    nopuedo ver $
    me quede|quede ciega|ciego
    ceguera
    flotadores en
    zigzag|zigzags
    veo|vi|viendo|aparecen .. bichitos|bichos|mosquitos|hilitos|culebritas|telitas|motas|motitas|pelusas|gusanitos
    luces|lucecitas|rayos|destellos .. ojo|ojos|vista
calm-eye =
    no veo bien|las|la|el|los la|el|letra|letras|pantalla|botones|boton|foto|telefono
    no veo la|el|los|las|como|por|que|hora|un boton|botones|hora|letra|letras|mensaje|diferencia|que|problema
    no veo nada mal|malo|raro|de
    perdi|perder de vista
    vi|veo .. las? estrellas anoche|cielo
    veo|viendo la|el|una|tele .. punto|puntos
    veo las|unas luces de
sign-face-speech =
    cae|cayo|caida .. lado|media de? la? cara|boca
    cae|cayo|caido la|el|media cara|boca|labio|parpado
    cara|boca|labio|ojo .. para|hacia|a un|el lado|costado
    boca|cara|labio .. de lado
    cara|boca|labio|labios|sonrisa|parpado|ojo|rostro .. torcida|torcido|torcio|tuerce|chueca|chueco|caida|caido|cae|cayo|paralizada|paralizado|paralizo|dormida|dormido|durmio|adormecida|entumecida|entumecido|ladeada|ladeado|colgando|desviada|desvio|virada|rara
    torcida|torcido|torcio|tuerce|chueca|caida|caido|paralizo|paralizada|durmio|adormecida|desvio|viro|ladeada|durmio|entumecio .. cara|boca|labio|labios|sonrisa|parpado|rostro
    nopuedo hablar|articular|pronunciar
    cuesta|cuestan|dificultad|dificil|problemas|trabajo|costaba .. hablar|hablando|pronunciar|articular|habla
    hablo|hablando|habla|hablar .. raro|rara|mal|enredado|enredada|trabado|pastoso|pastosa|borracha|borracho|arrastrando|arrastra|lento|trabada|extrano|cuesta
    se me traba|trabo|enreda|enredo|duerme|durmio|trabaron|pone|puso la lengua|habla
    lengua .. traba|trabada|pesada|dormida|enreda|enredada|gorda|trapo|durmio
    arrastro|arrastra|arrastrando las|la palabras|lengua
    no me|le salen|sale|vienen bien? las|la|el? palabras|voz|habla
    no encuentro|hallo|consigo|logro .. palabras
    nopuedo .. palabras
    palabras .. no|mal|enredadas|revueltas|raras|salen
    balbuceo
    balbuceando
    balbucea
    no me entienden al|cuando|lo hablar|hablo|que
    paralisis facial
calm-face-speech =
    nopuedo hablar ahora|ahorita|hoy|mas|por|mucho|contigo|con|luego|en
    boca abajo
sign-cannot-get-up =
    nopuedo .. levantarme|pararme|incorporarme|levantarse|enderezarme|alzarme
    nopuedo ponerme de|en pie
    nopuedo ponerme parada|parado|derecha|derecho
    nopuedo moverme
    nopuedo sentarme $
    como .. levantarme|incorporarme|pararme $
    como .. levantarme|incorporarme|pararme del|de suelo|piso|el
    como me levanto|incorporo $
    como me levanto|incorporo|paro del suelo|piso
    como llegue|termine|acabe|vine|quede al|en|a el? suelo|piso
    desperte|amaneci en el? suelo|piso
    no se|recuerdo|entiendo como llegue|termine|acabe|vine|quede al|en|a el? suelo|piso
    no me acuerdo de? como llegue|termine|acabe|vine|quede al|en|a el? suelo|piso
    nopuedo salir|bajar|subir|moverme de|del la|el? suelo|piso|cama|bano|banera|tina|ducha|silla|sillon|sofa
    nopuedo salir|levantarme de|del
    no me levanto|paro|incorporo $
    no me|se? levanto|para|levanta|paro del|de la|el? suelo|piso|cama|bano|banera|silla
    estoy|sigo|quede|quedo|esta|quede|tirada|tirado|tumbada|tumbado|acostada|atrapada|atascada|atorada|caida|echada|botada ya|todavia|tirada|tirado|tumbada|caida|acostada|aqui|sola|aun? en|por el? suelo|piso|bano|banera|tina|ducha
    en|del el? suelo|piso .. ayuda|ayudame|ayudenme|ayudeme|nopuedo|levantarme|sola|tirada|tirado
    ayuda|ayudame|ayudenme|ayudeme|auxilio|socorro .. suelo|piso|levantarme|pararme|caida
    tirada|tirado en|por el? suelo|piso|bano|cocina|patio|jardin|calle|banera
    ayuda|ayudame|ayudenme|ayudeme|ayuden para|a levantarme|pararme|incorporarme|levantar
    necesito que me|alguien levanten|levante|paren|ayuden|ayude
    necesito ayuda para|a? levantarme|pararme
    atrapada
    atrapado
    atorada|atascada|atascado en la|el banera|tina|bano|ducha|cama
    me encontre|encontraba|vi|veo|desperte|hallo|halle en|por el suelo|piso
calm-cannot-get-up =
    nopuedo levantarme|pararme temprano|antes|tan|pronto|a|ahora|todavia|hasta|sin|de
    estoy .. en el piso <n>|de|primero|segundo|bajo
    tirada en el sofa|sillon
    estoy|esta sentada|sentado|acostada en el suelo|piso haciendo|con|jugando
    estoy en el bano $
    estoy en el bano ahora|luego|espera
sign-emergency =
    911
    112
    061
    llama|llamen|llame|llamar|llamad|llamo|llamale|llamenle|marca|marquen|marque|marcar|pidan|pide|manden|manda|envien al|a|una|un|el|la|por|a|favor? <n>|112|911|123|061|107|066|131|ambulancia|emergencias|urgencias|medico|bomberos|cruz
    ambulancia
    🚑
    paramedicos
    paramedico
    emergencia
    es|esto|una|un|muy urgente|urgencia|emergencia
    auxilio
    socorro
    atraganto
    atragante
    atragantada
    atragantado
    atragantando
    convulsion
    convulsiones
    convulsionando
    convulsiono
    ataque epileptico|epilepsia
    sangro|sangra|sangrando|sangrado mucho|muchisimo|harto|un|sin
    no|nopuedo para|deja|parar|dejar|paro de sangrar
    mucha|muchisima|harta sangre
    hemorragia
    desangro
    desangrando
    me muero
    me estoy muriendo
    estoy muriendo|muriendome
    me voy a morir
    me siento morir
    🆘
    sos
    manden|manda|mande|envien|envia|mandame a? alguien|ayuda
    que alguien me ayude|socorra|auxilie|atienda
    alguien que me? ayude|socorra|auxilie
    alguien ayudeme|ayudame
calm-emergency =
    numero|contacto|telefono|salida|numeros|tel de|para|por emergencia|emergencias|urgencias|urgencia
    no|nada es|muy|tan? una|urgente|emergencia|urgencia urgente|emergencia|urgencia?
    no es urgente|emergencia
    sin urgencia
    no hay urgencia|emergencia
    me muero|muriendo de|por|del risa|sueno|hambre|ganas|verguenza|calor|frio|aburrimiento|sed|gusto|cansancio|ver|ir|pena|cansada
    luz|ropa|fondo de emergencia
# heard even where it is negated
sign-self-harm =
    quitarme|quitarse|quito|quite|quitar|quitaria la|mi vida
    me quito|quite la vida
    matarme
    matarse
    me mato
    me mate
    me quiero|voy|voy|quisiera|gustaria a? matar|morir|suicidar|ahorcar|colgar
    suicidio
    suicidarme
    suicidar
    suicida
    suicide
    suisidio
    suisidarme
    me suicido
    no|noquiero quiero|quisiera|deseo|merezco seguir? vivir|viviendo|existir|despertar|despertarme|vivo
    noquiero seguir asi|viviendo|viva|vivo|aqui|en|existiendo|mas|con|adelante
    noquiero vivir
    no quiero mas vivir|vida
    quiero|quisiera|deseo|prefiero|preferiria|ojala|pido|rezo|gustaria|ganas|pienso|pensando|espero .. morir|morirme|muerta|muerto|muera|muriera|morirse|desaparecer|desaparecer
    mejor .. muerta|muerto|no despertar|muriera|muera
    mejor muerta|muerto|morir|morirme|morirse
    estaria|estarian|estara|estaran|estuviera|seria|estuvieran .. mejor|bien .. sin mi
    mejor sin mi
    mejor si yo|no me? no? estuviera|estoy|existiera|muriera|muero|faltara
    si yo no|me estuviera|existiera|faltara|muriera|muero
    hacerme|hago|hacer dano|algo|mal a? mi misma|mismo
    hacerme dano
    <wish> .. lastimarme|cortarme|herirme|golpearme|matarme|morirme|ahorcarme
    lastimarme
    cortarme las|los venas|munecas
    cortar|corte|corto me? las venas
    las venas
    acabar|acabo|terminar|termino|acabe|termine|poner con todo|mi|esto|la|fin vida|todo? $
    acabar|terminar|poner|ponerle con|fin a? la|mi|todo|esta vida?
    acabar|terminar de una vez
    quiero|quisiera|ganas que? todo|esto|de se|ya? acabe|termine|acabara|terminara|pare|acabar|se|terminar|todo acabe|termine?
    que se? acabe|termine|acabara todo|esto|ya
    para que vivir|vivo|seguir|existir
    para que sigo viviendo|aqui|viva
    no|sin|ni|perdi|pierdo tengo|las? ganas de vivir|seguir|existir
    ganas de vivir|morir|morirme|matarme
    no|sin|ni|ningun tengo|hay|ningun|veo|le? motivo|motivos|razon|razones|sentido para|de|a vivir|seguir|la
    no le|encuentro|tiene|veo|hallo encuentro|veo|hallo? sentido .. vida|vivir|seguir
    la vida no|ya no? tiene|vale
    mi vida no tiene|vale
    no vale la pena vivir|seguir|la
    no merece la pena vivir|seguir
    cansada|cansado|harta|harto|aburrida de vivir|la|esta|seguir vida|viviendo|vivir?
    cansada|cansado de vivir
    nopuedo mas con|vivir la|esta|mi|esto|todo|vida
    nopuedo seguir|vivir asi|viviendo|adelante|mas
    ya nopuedo seguir|vivir
    no aguanto|soporto mas? la|esta|mi|vivir vida|asi
    no aguanto mas vivir
    soy|ser una|un carga|estorbo
    nadie me .. echaria|extranaria|echara|extranara|extranaria|quiere|necesita
    a nadie le importo|importaria|importa
    tirarme|tiro|lanzarme|lanzo|aventarme|aviento|saltar|arrojarme|echarme por|de|del|desde|al|a|bajo la|el|un|una|tren|metro|ventana|balcon|puente|techo|azotea|vacio|vias ventana|balcon|puente|techo|azotea|tren|metro|vacio|vias|edificio?
    tomarme|tome|tomo|tragarme|trague|tomado todas|todo|todos|un|muchas las|los|el|frasco|bote|mis|un? pastillas|pastilla|medicamentos|frasco|tabletas|medicinas
    tome|tomado|tomarme muchas|demasiadas pastillas
    sobredosis
    no despertar
    no despertarme
    no volver a despertar
    no despertara|despertarme|despierte mas|nunca
    ojala no despierte|despertara|despertar|me|hubiera
    dormirme|dormir para siempre
    desaparecer del|de|para|siempre mundo|siempre
    quiero desaparecer
    dejar|dejo de vivir|existir
    autolesion
    autolesionarme
    ahorcarme
    colgarme
    pegarme un tiro
    ya no quiero nada
    nada por lo|que que? vivir
    sin esperanza
    no hay salida
    no veo salida
    sin salida
    adios mundo
    me quiero ir|morir de este|con|ya
    despedirme de todos|la
    hacer una tonteria|locura
    quiero|deseo|quisiera|ganas .. irme|reunirme|estar|encontrarme con .. cielo|dios|difunto|gloria
    me voy a hacer dano
    voy a hacerme dano
    mejor estaria|estarian|estoy|estuviera muerta|muerto
    para que seguir $
wish =
    quiero quisiera deseo pienso pensando ganas ojala mejor prefiero gustaria voy
calm-self-harm =
    me mato|mate|matar a|de|entrenar|trabajando|estudiando
    mato|mate de|a risa|ejercicio|ejercicios
    el tiempo
    casi|poco me mato|mate
    calle sin salida
    sin salida al mar
    acabar|terminar|acabe|termine|termino|acabo con todo|todas|todos|esto la|las|el|los|tanda|ejercicios
    quiero terminar|acabar|que todo salga
    carga de
    me? voy a hacer|hacerme dano si|cuando|al|por|en|con

## Denials

# straight before a pain noun
none-words =
    sin ningun ninguna ninguno cero ni tampoco
# before any of them
cannot-words =
    nopuedo noquiero
not-words =
    no sin nunca jamas tampoco ni nadie
none-between =
    un una ningun ninguna nada de mas nuevo nueva otro otra otros otras mayor tipo clase senal sentir tener la el las los
    o u ni dolor dolores mareos caidas molestia molestias rodilla espalda cadera cabeza pecho
    absolutamente haber ninguno algun alguna extrano raro tenido
not-between =
    me te le se nos lo la el las los mi mis ha he han hemos haya hay hubo habia tengo tuve tenido tiene tener tenemos tuvimos
    siento senti sentido sentia sentir noto note notado ningun ninguna ninguno nada de mas ya hoy ayer esta estoy estuve estaba estar es
    fue era o u ni en a vuelto volvi sufrido sufri ahora eso todavia aun absolutamente siquiera nuevo nueva esto
    aqui semana matina ultimamente algun alguna estos dias otra vez ando sigo haber dolor mareos
    presento presenta padezco anoche
# joins a list after a denial: "sin dolor, caídas ni mareos"
either =
    o u ni
list-filler =
    , ningun ninguna de
# a denial followed by one of these is no denial
lift =
    excepto
    exceptuando
    salvo
    menos la|el|las|los|en|cuando|mi|al|un|una
    aparte
    fuera de
    a no ser
    a menos
    hasta que|la|el|las|los|hoy|ahora|ayer|<n>|llegar
    antes
    de milagro|chiripa|suerte
    por poco|los pelos
    al principio|empezar|comienzo|inicio|comenzar
    sino
    tanto
    tan
    demasiado
    casi
    apenas
    muy
    solo|solamente|nomas|unicamente en|la|el|las|los|cuando|al|un|una|mi|si|hoy|a
    un poco
    un poquito
    pero hoy|ahora|todavia|un|una|luego|despues|ayer
    como antes|ayer|siempre|la
    mas que
    no se
    no estoy segura|seguro
    ojala
    espero
    ya veremos
    todo el tiempo|dia
    siempre
    del todo
    igual
    aunque si|un|algo
# the same, but only straight after what was denied: "no me duele mucho", but not "no me duele, mucho mejor"
lift-next =
    mucho|muchisimo|tanto|tan|demasiado
    como ayer|antes|siempre|la|el|otras
# a number after a word of pain that counts what was done: "me dolio 8 hechas"
score-not =
    <ache> <n> hechas|hechos|hecha|hecho|hice|repeticiones|saltos|completadas|terminadas|listas
# well-wishing that says nothing of the body
greeting =
    buenos|buen dias|dia
    buenas tardes|noches|dias
# a score after a word of pain: "dolor 5", "me duele un 5"
score =
    <ache> <score-link>? <score-link>? <score-link>? <n> /|de|sobre <n>
    <ache> <score-link>? <score-link>? <score-link>? <n>
    <ache> :|=|- <n>
    <ache> :|=|- <n> /|de|sobre <n>
    <ache> .. <n> /|de|sobre <n>
    <n> /|de|sobre <n> .. <ache>
    <n> /|de|sobre <n> de? <ache>
    nota|puntuacion|puntaje :|de|es? un? <n>
    nota|puntuacion|puntaje :|de|es? <n> /|de|sobre <n>
    nivel|intensidad|grado <n> de? <ache>
    un|a <n> de <ache>
    <ache> .. nivel|nota|puntaje|intensidad|escala|como|un|grado|tipo|unos :|de|es|un|a? <n>
    <ache> en|de|la|el|las|los la|el|mi|las|los|mis? <part> derecha|izquierda|derecho|izquierdo? <n>
    <ache> en|de|la|el|las|los la|el|mi|las|los|mis? <part> derecha|izquierda|derecho|izquierdo? es|como|de|un|nivel|a|: un|de? <n>
    <part> me? <ache> un|como|es|nivel|de|: <n>
score-of =
    de
    sobre
score-link =
    nivel es de un una como unos sobre ahora quiza quizas hoy todavia la el al era fue esta en a puntos aproximadamente
    casi mas menos
# a number straight before a noun of pain could be a score or a count
score-doubt =
    <n> <ache-noun>
    <n> de <ache-noun>
ache-noun =
    dolor dolores molestia molestias
but =
    pero aunque porque sino excepto

## What is said in the place of a button's words, in the questions about pain and falls

say-place-back =
    espalda
    columna|lumbar|lumbares|cintura|lomo|coxis|coccix|rabadilla|rinones
say-place-hip =
    cadera|caderas
    nalga|nalgas|gluteo|gluteos|trasero|culo|cola|pompis
say-place-groin =
    ingle|ingles|entrepierna|pelvis|pubis
say-place-thigh =
    muslo|muslos|cuadriceps|isquiotibiales
    parte de? arriba|alta de la pierna
say-place-knee =
    rodilla|rodillas|corva|corvas|menisco
say-place-shin =
    espinilla|espinillas|canilla|canillas|tibia
say-place-foot =
    pie|pies|talon|talones|dedo|dedos|planta|empeine|tobillo|tobillos
    dedo|dedos|planta|parte de|del pie|los pies
say-place-elsewhere =
    cuello|nuca|hombro|hombros|brazo|brazos|codo|codos|muneca|munecas|mano|manos|pulgar|cabeza
    costilla|costillas|barriga|panza|estomago|vientre|mandibula|pantorrilla|pantorrillas|gemelo|gemelos
    dedo|dedos de la|las mano|manos
    todo|todas|todos el|partes|lados cuerpo?
    otro|otra lado|parte|lugar
    todo
say-when-during =
    durante|mientras
    al|cuando saltar|salto|saltaba|pisar|caer|hacer|hacerlo|hacerlos|hacerlas|hago|hice|hacia|bajar|brincar|brinco
    cada vez|salto|pisada
    en el momento
say-when-after =
    despues|luego
    al acabar|terminar
say-when-next-morning =
    al|el dia siguiente
    la|a matina siguiente|despues
    al despertar|despertarme|levantarme
say-when-other =
    siempre|constante|constantemente
    todo el tiempo|dia|rato
    de|por|en la noche
    a|en ratos|reposo
    al|cuando camino|caminar|ando|andar|siento|sentarme|duermo|dormir|paro|pararme
say-new =
    nuevo|nueva
    nunca .. tenido|sentido|tuve|habia|dolido|antes
    primera vez
    no .. tenido|sentido|tuve .. antes
    no es? como? el|la|lo|mi? igual|mismo|misma|vieja|viejo|siempre|antes|conocido|conocida
    no es? de siempre|antes
say-known =
    no es? nuevo|nueva
    nada nuevo
    viejo|vieja|antiguo|antigua|conocido|conocida
    de siempre
    ya .. tenia|tenido|tuve|conocia|habia|dolia|conozco
    hace|desde anos|meses|tiempo|mucho|siempre
    lo|el|la mismo|misma de? siempre|antes?
    como siempre|antes
say-sharper =
    peor|agudo|aguda|punzante
    mas fuerte|intenso|intensa|agudo|aguda|que
    peor|mas que de? antes|siempre|nunca|costumbre|ayer
    no es|esta? como? el|la|lo? igual|mismo|misma|normal|siempre|antes
    no es? lo|el|de mismo|siempre|costumbre
say-as-usual =
    igual
    lo|el|la mismo|misma
    como|igual que? siempre|antes|de
    no .. peor|agudo|fuerte|mas
    ni peor|mas
    de costumbre
    menos fuerte|que
    normal
say-fall-today =
    esta matina|tarde|noche
    ahora|ahorita|recien
    hace un|una|unas|dos|<n>? hora|horas|rato|minutos|momento
    hace poco
say-fall-yesterday =
    anoche
    ayer en|por la matina|tarde|noche
say-fall-earlier =
    la semana|mes pasada|pasado
    el otro dia
    el lunes|martes|miercoles|jueves|viernes|sabado|domingo
    hace <n>|unos|unas|varios|varias|dos dias|semanas|meses
    hace una|un semana|mes
    antier|anteayer
say-doing-exercise =
    ejercicio|ejercicios|saltos|saltando|pisadas|brincos|tanda
    bajadas de talon|talones
say-doing-walking =
    caminar|caminando|camino|andando|andar|paseando|paseo
    en|por la calle|acera|banqueta|vereda
    perro
say-doing-stairs =
    escalera|escaleras|escalon|escalones|gradas
say-doing-getting-up =
    levantarme|levantandome|levante|levantaba|pararme|parandome
    de la cama|silla
    del sillon|sofa
    saliendo|salir de la? cama|banera|tina
say-doing-other =
    ducha|bano|banera|cocina|jardin|patio|limpiando|cocinando|bailando|barriendo|regando
    nada
    bus|autobus|camion|coche|carro|metro
say-mistake =
    ^ uy|ups|perdon $
    me equivoque
    equivoque de boton|tecla
    boton|tecla equivocado|equivocada
    sin querer $
    por|un error $
    lo? toque|puse|pulse|aprete por error|equivocacion|accidente
    ^ deshacer|cancelar|borrar|anular eso|lo? $
say-sign-chest =
    ^ el|mi? pecho $
say-sign-breath =
    ^ la|mi? respiracion $
say-sign-face-speech =
    ^ la|mi|el? cara|habla $
say-sign-head-knock =
    ^ la|mi? cabeza $
say-sign-calf =
    ^ la|mi|el|una? pantorrilla|gemelo $
say-sign-eye =
    ^ un|el|mi|los? ojo|ojos $
say-sign-groin-thigh =
    ^ la|mi|el? ingle|muslo $
