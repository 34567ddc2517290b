### What we say in Spanish. (What we understand is in a catalogue of its own.)
###
### The ids, their arguments and the rules are those of `en.ftl`. Written for a person of 70, wherever
### Spanish is spoken: usted, short, plain; words that no country reads otherwise; nothing that agrees
### with the gender of the reader or of a movement ("Hoy lleva: 20", never "hechos" or "hechas").
### Client texts are measured by Fernández-Huerta and INFLESZ.
###
### Words (common practice, no source, unless said otherwise):
###   bout tanda | practice clínica | clinician terapeuta | client paciente | flag aviso | hold suspensión
###   break pausa | clearance autorización | digest resumen | cover suplencia | companion complementario
###   "saltar" means both to jump and to skip, so a skip is "esta no". "Caída" is a fall, so a heel drop is
###   a "bajada de talón".
###
### Times: the clock of 12 hours with the part of the day, as they are said aloud ("las 8 de la noche").
### "20:00" has to be worked out by readers in much of America, and "8:00" alone is read both ways; the
### part of the day is understood everywhere. In narrow places "8 p. m.". A time carries its article:
### "la 1", "las 2".

-language = Español

## part: pieces

part-side =
    { $per_side ->
        [yes] { " " }por lado
       *[no] { "" }
    }
part-reps =
    { $movement ->
        [none] { $reps }
       *[other]
            { $reps ->
                [one] { $reps } { $movement_one }{ part-side }
               *[other] { $reps } { $movement }{ part-side }
            }
    }
part-done =
    { $total ->
        [0] { $done }{ part-side }
       *[other] { $done } de { $total }{ part-side }
    }
part-next =
    { $next ->
        [none] { "" }
       *[other] { " " }La próxima es a { $next }.
    }
part-call =
    { $phone ->
        [none] Llame a la clínica.
       *[other] Llame a la clínica: { $phone }.
    }
part-call-today =
    { $phone ->
        [none] Llame hoy a la clínica.
       *[other] Llame hoy a la clínica: { $phone }.
    }
part-questions =
    { $phone ->
        [none] ¿Dudas? Llame a la clínica.
       *[other] ¿Dudas? Llame a la clínica: { $phone }.
    }
part-answer-hours =
    { $answer_hours ->
        [none] { "" }
       *[other] { " " }Contestan: { $answer_hours }.
    }
part-dose =
    { $total ->
        [one] { $total } { $movement_one }{ part-side } al día
       *[other] { $total } { $movement }{ part-side } al día
    }, en tandas de { $bout_reps }
part-urgent =
    { $urgent ->
        [yes] Urgente.{ " " }
       *[no] { "" }
    }
part-values =
    { $values ->
        [none] { "" }
       *[other] { " " }Esto sí valdría: { $values }.
    }
part-no-emergency-number = número local de emergencias
part-no-clinician = su terapeuta
part-no-practice = su clínica
part-and = { $before } y { $last }
part-date = { $weekday } { $number } de { $month }
    .short = { $weekday } { $number } { $month }
part-date-year = { $date } de { $year }
    .short = { $date } { $year }
part-moment = { $date }, a { $time }
    .short = { $date }, { $time }
part-time =
    { $hour12 ->
        [1] la 1{ part-minutes }
       *[other] las { $hour12 }{ part-minutes }
    } { part-of-day }
    .short = { $hour12 }{ part-minutes } { part-half }
part-minutes =
    { $minute ->
        [0] { "" }
       *[other] :{ $minutes }
    }
part-of-day =
    { $hour ->
        [0] de la noche
        [1] de la madrugada
        [2] de la madrugada
        [3] de la madrugada
        [4] de la madrugada
        [5] de la madrugada
        [6] de la mañana
        [7] de la mañana
        [8] de la mañana
        [9] de la mañana
        [10] de la mañana
        [11] de la mañana
        [12] del mediodía
        [13] de la tarde
        [14] de la tarde
        [15] de la tarde
        [16] de la tarde
        [17] de la tarde
        [18] de la tarde
       *[other] de la noche
    }
part-half =
    { $hour ->
        [0] de la noche
        [1] a. m.
        [2] a. m.
        [3] a. m.
        [4] a. m.
        [5] a. m.
        [6] a. m.
        [7] a. m.
        [8] a. m.
        [9] a. m.
        [10] a. m.
        [11] a. m.
        [12]
            { $minute ->
                [0] mediodía
               *[other] p. m.
            }
       *[other] p. m.
    }
part-span = de { $start } a { $end }
part-row-digest =
    { $reasons ->
        [none] { $name }
       *[other] { $name } le necesita: { $reasons }
    }
    { $days } de { $needed } días, { $reps_capped } de { $prescribed } repeticiones{ part-side }{ $reps_over ->
        [0] { "" }
       *[other] { " " }(+{ $reps_over } de más)
    }, { $bouts } de { $bouts_planned } tandas, reparto teórico { $spread ->
        [none] -
       *[other] { $spread } %
    }, dolor { $pain ->
        [none] -
       *[other] { $pain }
    }{ $excused ->
        [0] { "" }
        [one] , { $excused } justificado
       *[other] , { $excused } justificados
    }{ $open ->
        [0] { "" }
        [one] , { $open } abierto
       *[other] , { $open } abiertos
    }{ $companions ->
        [none] { "" }
       *[other] . { $companions }
    }{ $step ->
        [none] { "" }
       *[other] . Prueba de pasos { $step }
    }
part-row-client =
    { $name }{ $whose ->
        [none] { "" }
       *[other] { " " }(paciente de { $whose })
    }{ $reasons ->
        [none] { "" }
       *[other] : { $reasons }
    }
part-row-cover =
    { $name }, { $until ->
        [none] sin fecha de fin
       *[other] hasta el final del { $until }
    }
part-score = { $day }: { $score }
part-yes = sí
part-no = no
part-row-flag =
    #{ $flag } { $name }: { $reason }, desde el { $since }{ $dates ->
        [none] { "" }
       *[other] { " " }({ $dates })
    }
part-reason =
    { $reason }{ $since ->
        [none] { "" }
       *[other] { " " }desde el { $since }
    }{ $pain ->
        [none] { "" }
       *[other] , dolor { $pain }
    }
part-companion = { $companion } { $done } de { $days }
part-amount =
    { $measure ->
        [hold] { $amount } s
       *[other]
            { $amount ->
                [one] { $amount } vez
               *[other] { $amount } veces
            }
    }{ $rounds ->
        [one] { "" }
       *[other] , { $rounds } rondas
    }
part-beside = { $companion }: { part-amount } ({ $weekdays })
part-row-bout = A { $at }: { $reps }
part-row-dose =
    { $bouts ->
        [one] { $bouts } tanda de { $most }: índice { $index }
       *[other] { $bouts } tandas de hasta { $most }, cada { $gap_minutes } min: índice { $index }, { $against_one_go } veces el de una sola tanda
    }
part-row-setting = { $setting }: { $value }{ $unit }
part-item = - { $item }
part-chosen =
    { $chosen ->
        [yes] Sí:{ " " }
       *[no] { "" }
    }

part-trial =
    { $best ->
        [none] sin tiempo
       *[other] { $best } s
    }
part-step =
    { $best ->
        [none] sin tiempo
       *[other] { $best } s
    }{ $positive ->
        [yes] , cribado positivo
       *[no] { "" }
    }{ $slower ->
        [yes] , más lento que el mejor
       *[no] { "" }
    } ({ $day_short })
part-row-step = { $day }: { $trials }{ $home ->
        [yes] { " " }(en casa)
       *[no] { "" }
    }

## part: lines of a flag

part-flag-urgent =
    { $urgent ->
        [yes] Todo el ejercicio está suspendido hasta que usted levante la suspensión.
       *[no] { "" }
    }
part-flag-movement = Suspendido hasta que usted lo levante: { $movement }
part-flag-sign = Señal: { $sign }
part-flag-score = Dolor: { $score } de 10
part-flag-place = Dónde: { $place }
part-flag-when = Cuándo: { $when }
part-flag-new =
    { $new ->
        [yes] Dolor nuevo
       *[no] Dolor conocido
    }
part-flag-sharper =
    { $sharper ->
        [yes] Más agudo de lo habitual
       *[no] No más agudo de lo habitual
    }
part-flag-injured =
    { $injured ->
        [yes] Con lesión
       *[no] No habla de lesión
    }
part-flag-new-pain =
    { $new_pain ->
        [yes] Dolor nuevo desde la caída
       *[no] Sin dolor nuevo desde la caída
    }
part-flag-doing = Qué hacía: { $doing }
part-flag-unanswered = Sin respuesta a: { $unanswered }
part-flag-reps = De una vez: { $reps }{ part-side }
part-flag-done = El { $day }: { $done } de { $total }{ part-side }
part-flag-away = Motivo: { $away }
part-flag-because = Motivo: { $because }
part-flag-readiness =
    Ahora contestó “sí, o no lo sé” a:
    { $readiness }
part-flag-begins = Desde el { $begins }
part-flag-until = Hasta el { $until }
part-flag-screened =
    { $screened ->
        [no-time] No pudo completarla: cribado positivo, sin tiempo
        [positive] Cribado positivo: sobre el corte
        [positive-slower] Cribado positivo: sobre el corte, y más lento que el mejor por más de lo fijado
       *[slower] Más lento que el mejor por más de lo fijado
    }
part-flag-trials = Intentos: { $trials }
part-flag-best-before = El mejor hasta ahora: { $best_before } s
part-flag-stepped = Última prueba de pasos: { $stepped }
part-flag-words = Sus palabras: “{ $words }”
part-flag-phone = Teléfono: { $phone }

## client: bouts

day-opening =
    { $bouts ->
        [one] Hoy: { part-reps } en 1 tanda, más o menos a { $first }.
       *[other] Hoy: { part-reps } en { $bouts } tandas, más o menos de { $first } a { $last }.
    }
prompt = Ahora: { part-reps }. Hoy lleva: { part-done }.
safety = Antes, deje el suelo libre y póngase zapatos. Tenga a mano algo firme para sujetarse. Pare si le duele.
noted = Anotado: { part-reps }.
nudge = Queda por hacer: { part-reps }. También puede escribir: más tarde, o: esta no.
no-answer = No tuve respuesta sobre { part-reps }. Está bien. Aún puede decirme lo que hizo.{ part-next }
away = Estuve sin conexión un rato y no le pude avisar a tiempo. No tiene que recuperar nada.{ part-next }

logged =
    { $day ->
        [none] Anotado: { part-reps }. Hoy lleva: { part-done }.{ part-next }
       *[other] Anotado para el { $day }: { part-reps }. Ese día lleva: { part-done }.
    }
skipped =
    { $day ->
        [none] De acuerdo, esta no: { part-reps }. Está bien. Hoy lleva: { part-done }.{ part-next }
       *[other] De acuerdo, esta no, del { $day }: { part-reps }. Está bien.
    }
undone =
    { $day ->
        [none] Borrado: { part-reps }. Hoy lleva: { part-done }. Ya puede escribir el número correcto.{ part-next }
       *[other] Borrado del { $day }: { part-reps }. Ese día lleva: { part-done }.
    }
put-off =
    { $next ->
        [none] De acuerdo. Hoy ya no le pediré esta tanda.
       *[other] De acuerdo. Se lo pediré otra vez a { $next }: { part-reps }.
    }
more-than-planned = El plan del día era { $total }{ part-side }. Por favor, no haga más que el plan.
rest-day-noted = Este día no estaba en el plan. Lo he anotado. Por favor, guarde sus días de descanso.
day-done = Esto es todo por hoy.
no-more-today = Hoy no le pediré más. No tiene que hacer nada extra.
stopped-for-now = Sus tandas están paradas por ahora. Por favor, no haga más hasta que yo le escriba.
already-logged = Esta tanda ya me la dijo antes. Lleva: { part-done }.{ part-next }
edit-kept = Dejo el número que tenía. Para cambiarlo, escriba: borrar. Y luego el número correcto. Lleva: { part-done }.{ part-next }
nothing-open = Ahora no hay ninguna tanda que hacer. Hoy lleva: { part-done }.{ part-next }
day-over = El { $day } está cerrado y no lo puedo cambiar. No tiene que hacer nada extra.
undo-nothing = No hay nada que pueda borrar.
later-no-more = Esta tanda ya no se puede dejar para más tarde. Puede hacerla ahora, hacer menos, o decir: esta no.
later-too-late =
    { $next ->
        [none] Hoy no queda otra hora. Puede hacerla ahora, o decir: esta no.
       *[other] Para hoy es tarde. Lo más tarde que puede ser es a { $next }. Puede hacerla ahora, escribir una hora antes, o decir: esta no.
    }

ask-reps =
    { $asked ->
        [none] ¿Cuántas veces lo hizo{ part-side }? Escriba el número.
       *[other] ¿Cuántas veces lo hizo{ part-side }? Toque el número o escríbalo.
    }
ask-reps-again = ¿Cuántas veces lo hizo? O escriba: esta no
ask-reps-range = Puedo anotar de 1 a { $largest }. ¿Cuántas veces lo hizo?
ask-reps-sure = ¿Hizo { $reps }{ part-side }? Aún no lo he anotado.
ask-reps-unclear = No sé qué número quiere decir, así que no anoté nada. ¿Cuántas veces lo hizo?

today = Hoy lleva: { part-done }.
today-open = Ahora toca: { part-reps }.
today-next = La próxima es a { $next }: { part-reps }.
# the week: which days, a day made up, how it was

week-days = Le propongo estos días para la semana: { $dates }. ¿Le van bien?
choose-days = ¿Qué días le van bien? Ahora tiene: { $dates }. Toque un día para ponerlo o quitarlo.
days-count =
    { $exact ->
        [yes]
            { $least ->
                [one] Elija 1 día.
               *[other] Elija { $least } días.
            }
       *[no] Elija de { $least } a { $most } días.
    }
days-rest =
    { $rest_days ->
        [one] Deje 1 día de descanso entre dos días.
       *[other] Deje { $rest_days } días de descanso entre dos días.
    }
week-days-kept = Sus días de esta semana: { $dates }.
make-up =
    { $done ->
        [0] No tengo nada anotado del { $day }. Está bien. No tiene que hacer nada extra.
       *[other] Del { $day } tengo anotado: { $done }{ part-side }. Está bien. No tiene que hacer nada extra.
    } { $today ->
        [yes] ¿Le va bien hoy en su lugar?
       *[no] ¿Le va bien el { $instead } en su lugar?
    }
make-up-kept =
    { $today ->
        [yes] Bien. Le escribo hoy.
       *[no] Bien. Le escribo el { $day }.
    }
make-up-declined = De acuerdo. Lo dejamos así.
make-up-too-late = El { $day } ya no cabe, porque el descanso va primero. El resto de la semana queda igual.
made-up-not-needed = Así no hace falta el { $day }. Lo he quitado.
week-no-room =
    Esta semana { $needed ->
        [one] no cabe 1 día
       *[other] no caben { $needed } días
    }, porque el descanso va primero. Por favor, no intente hacer de más.{ $dates ->
        [none] { "" }
       *[other] { " " }Queda como estaba: { $dates }.
    }
ask-week = Un toque sobre su semana: ¿tuvo dolor, se cayó o se le escapó la orina?
week-thanks = De acuerdo, lo he anotado.
week-no-plan = Aún no tiene plan. Lo hará { $clinician }.

today-rest =
    { $stopped ->
        [yes] Por ahora no le pido tandas. Por favor, no haga ninguna hasta que yo le escriba.
       *[no]
            { $done ->
                [0] Para hoy no hay tandas en el plan.
               *[other] Para hoy no hay tandas en el plan. Lleva: { $done }{ part-side }.
            }
    }

## client: pain and falls

ask-pain-sign =
    { $first ->
        [yes] He parado sus tandas por ahora. ¿Tiene algo de esto? En una emergencia, llame primero al { $emergency_number }.
       *[no] ¿Tiene algo de esto? En una emergencia, llame primero al { $emergency_number }.
    }
ask-pain-place = ¿Dónde le duele más?
ask-pain-score = ¿Cuánto le duele, de 0 a 10? 0 es nada de dolor. 10 es el peor dolor.
ask-pain-when = ¿Cuándo le duele?
ask-pain-new = ¿Es un dolor nuevo, o ya lo conoce?
ask-pain-sharper = ¿Es más agudo que el que suele tener?
pain-noted = Lo he anotado. Si quiere, siga con el plan.{ part-next } Pare si le duele más, y dígamelo. { part-questions }
pain-caution = Lo he anotado. Si quiere, siga hoy, pero con cuidado.{ part-next } Pare si le duele más, y dígamelo. Mañana por la mañana le pregunto otra vez. { part-questions }
noted-on-hold = Lo he anotado. Su ejercicio sigue parado. Solo { $clinician } le puede decir que siga. { part-questions } En una emergencia, llame al { $emergency_number }.
mistake-noted = De acuerdo, no anoto ningún dolor.{ part-next }
mistake-too-late = Me dijo que algo le duele, así que tengo que preguntarle esto.
no-pain-noted = De acuerdo, no anoto dolor ni números. Si algo le duele, dígamelo.
ask-morning = ¿Cómo está el dolor esta mañana, de 0 a 10? 0 es nada de dolor. 10 es el peor dolor. No le pido tandas hasta que me lo diga.

ask-fall-sign =
    { $first ->
        [yes] Siento que se haya caído. He parado sus tandas por ahora. ¿Le pasa algo de esto? En una emergencia, llame primero al { $emergency_number }.
       *[no] ¿Le pasa algo de esto? En una emergencia, llame primero al { $emergency_number }.
    }
ask-fall-injured = ¿Se hizo daño?
ask-fall-new-pain = ¿Tiene un dolor nuevo desde la caída?
ask-fall-when = ¿Cuándo se cayó?
ask-fall-doing = ¿Qué hacía cuando se cayó?
fall-noted = He anotado su caída y aviso a { $clinician }. Si quiere, siga con el plan.{ part-next } Si algo le duele después, pare y dígamelo. { part-questions }

## client: stopped, and started again

you-said-score = Me dijo { $score } de 10.
no-answer-so-stopped = Le pregunté cómo está y no tuve respuesta.
stop-contact = He parado todo el ejercicio y aviso a { $clinician }. Solo { $clinician } le puede decir que siga. { part-call-today }{ part-answer-hours } Si empeora mucho, llame al { $emergency_number }. Nadie lee este chat al momento.
stop-today = He parado todo el ejercicio y aviso a { $clinician }. Solo { $clinician } le puede decir que siga. { part-call-today }{ part-answer-hours } Si empeora mucho, llame al { $emergency_number }. Nadie lee este chat al momento.
stop-urgent-care = Por favor, vaya hoy a urgencias. No nos espere. Si empeora, llame ya al { $emergency_number }. Nadie lee este chat al momento. He parado todo el ejercicio y aviso a { $clinician }. { part-call }
stop-emergency = Llame ahora al { $emergency_number }. No nos espere. Nadie lee este chat al momento. He parado todo el ejercicio y aviso a { $clinician }.
stop-crisis =
    { $crisis_line ->
        [none] Por favor, llame ahora al { $emergency_number } y hable con alguien.
       *[other] Por favor, llame ahora al { $crisis_line } y hable con alguien. ¿Corre peligro? Llame al { $emergency_number }.
    } Nadie lee este chat al momento. He parado todo el ejercicio y aviso a { $clinician }.
stop-leak = Gracias por decirlo. He parado este ejercicio y aviso a { $clinician }. Solo { $clinician } le puede decir que siga. { part-questions }
held-by-clinician = De parte de { $clinician }: todo el ejercicio se para por ahora. Solo { $clinician } le puede decir que siga. { part-questions } En una emergencia, llame al { $emergency_number }.
release-told = Ya puede empezar otra vez, dice { $clinician }: { part-dose }, { $day ->
        [none] cuando acabe su pausa
       *[other] desde el { $day }
    }. Si siente un dolor nuevo, pare y dígamelo.

## client: joining

notice =
    Este chat es de { $practice }. Le pide los ejercicios que le da { $clinician }, poco a poco. Cada vez se llama tanda. Guarda sus respuestas.

    Qué guardamos: su nombre, sus horas, lo que hizo, y lo que cuente de su salud, dolor y caídas. Lo puede ver { $clinician } o quien haga su suplencia. La oficina solo ve su nombre y sus horas.

    La aplicación de chat lleva los mensajes. No van cifrados de extremo a extremo, y no los podemos borrar de sus servidores.

    Nadie lee este chat al momento. En una emergencia, llame al { $emergency_number }. { part-questions }

    Puede dejarlo cuando quiera. Escriba: /salir. Para ver qué guardamos: /datos. Puede que la clínica tenga que guardar sus datos.

    ¿Acepta?
consent-declined = De acuerdo. No guardo nada y no pregunto nada. Si cambia de idea, toque: Acepto. { part-questions } En una emergencia, llame al { $emergency_number }.
hurts-before-consent = Dice que algo le duele, o que se cayó. No puedo guardar ni preguntar nada antes de que acepte. { part-call-today } En una emergencia, llame al { $emergency_number }. Nadie lee este chat al momento.
consent-not-renewed = De acuerdo. No le pido tandas. Lo que la clínica tiene se queda allí. Si cambia de idea, toque: Acepto. Para salir de aquí, escriba: /salir. { part-questions } En una emergencia, llame al { $emergency_number }.
consent-kept = Gracias. Anoté que sí acepta. Todo sigue como antes.
ask-screen-bones =
    1 de 3. ¿Le pasa algo de esto?
    - { name-ready-broken-bone }
    - { name-ready-spine-fracture }
    - { name-ready-surgery }
    - { name-ready-two-falls }
    - { name-ready-bone-injections }
    - { name-ready-height }
ask-screen-heart =
    2 de 3. ¿Le pasa algo de esto?
    - { name-ready-heart }
    - { name-ready-dizzy-spells }
    - { name-ready-numb-feet }
    - { name-ready-eye }
    - { name-ready-blood-thinners }
ask-screen-else =
    3 de 3. ¿Le pasa algo de esto?
    - { name-ready-new-pain }
    - { name-ready-joint }
    - { name-ready-leaking }
    - { name-ready-pregnant }
    - { name-ready-replacement }
    - { name-ready-steroids }
ask-which = ¿Cuáles? Toque cada cosa que le pase o en la que tenga duda. Tóquela otra vez para quitarla. Luego toque: Eso es todo.
ask-usual-pain = ¿Cuánto dolor tiene en un día normal, de 0 a 10? 0 es nada de dolor. 10 es el peor dolor.
ask-times =
    A estas horas le puedo escribir. ¿Le van bien?
    Horas: { $window }
    Horas de silencio: { $quiet ->
        [none] ninguna
       *[other] { $quiet }
    }
    Zona horaria: { $zone }{ $days ->
        [none] { "" }
       *[other]
            { "" }
            Días: { $days }
    }
ask-times-zone = ¿En qué zona horaria está? Escriba una ciudad grande cerca de usted, así: Madrid. O mande el lugar donde está: toque el clip y luego: Ubicación. No guardo el lugar.
ask-zone-sure = Donde está son { $at }, y su zona horaria es { $zone }. ¿Es así? No guardé el lugar.
ask-times-window = ¿De qué hora a qué hora le puedo escribir? Escríbalo así: 8:00 a 20:00
ask-times-quiet = ¿A qué horas no debo escribir? Escríbalo así: 12:00 a 13:00. O escriba: ninguna
ask-times-days =
    ¿Qué días de la semana le van mejor? { $days ->
        [none] Ahora no tiene ninguno.
       *[other] Ahora tiene: { $days }.
    } Toque un día para ponerlo o quitarlo. O escríbalos así: lunes, jueves
times-do-not-fit = Su plan no cabe en esas horas, así que dejo las de antes. Por favor, elija más horas, o pregunte a su terapeuta.
ready-waiting = Ya está todo listo. Ahora sus respuestas van a { $clinician }. No le pido tandas hasta que { $clinician } diga que sí. Ahora no tiene que hacer nada. { part-questions }
ready =
    { $today ->
        [yes] Ya está todo listo. Sus primeras tandas son hoy.
       *[no] Ya está todo listo. Le escribo en su próximo día de tandas.
    }
readiness-kept = Gracias. He anotado sus respuestas.
moved-over = Hola, { $name }. Desde ahora hablamos aquí. Su chat de antes ya no recibe mensajes.
plan-told =
    Nuevo plan de { $clinician }: { part-dose }.
    Días: { $days ->
        [none] por elegir
       *[other] { $days }
    }
    Horas: { $window }
    Primer día: { $day }{ $beside ->
        [none] { "" }
       *[other]
            { "" }
            También: { $beside }
    }{ $note ->
        [none] { "" }
       *[other]
            { "" }
            Nota: { $note }
    }

## client: breaks

ask-break-reason = Le puedo dar una pausa. ¿Por qué la quiere?
ask-break-length = ¿Cuánto va a durar, desde hoy? Toque un botón, o escríbalo así: 5 días, o: hasta el domingo
ask-break-first = ¿Qué día empieza su pausa? Escríbalo así: viernes, o: 12 de marzo
ask-break-length-from = ¿Cuánto va a durar, desde el { $day }? Toque un botón, o escríbalo así: 5 días, o: hasta el domingo
break-too-far = No puedo contar tan lejos. Por favor, escriba un día más cercano.
break-not-now = De acuerdo. No hay pausa, y todo sigue según el plan.
break-started =
    { $until ->
        [none] Su pausa ha empezado. No le pido nada hasta que vuelva. Cuando vuelva, toque el botón o escriba: ya volví.
       *[other] Su pausa ha empezado. No le pido nada hasta el { $until }. Ese es su último día de pausa. ¿Vuelve antes? Toque el botón, o escriba: ya volví.
    }{ $done ->
        [0] { "" }
       *[other] { " " }Lo que hizo hoy queda anotado.
    } Aviso a { $clinician }.{ $too_long ->
        [yes] { " " }Tras una pausa tan larga, { $clinician } tiene que decir que sí antes de que siga.
       *[no] { "" }
    }
break-planned =
    { $until ->
        [none] Su pausa está anotada. Empieza el { $day }. Desde ese día no le pido nada hasta que vuelva.
       *[other] Su pausa está anotada. Empieza el { $day }. Su último día es el { $until }. Esos días no le pido nada.
    } Hasta entonces, todo sigue según el plan. Aviso a { $clinician }.{ $too_long ->
        [yes] { " " }Tras una pausa tan larga, { $clinician } tiene que decir que sí antes de que siga.
       *[no] { "" }
    }
break-ahead =
    { $until ->
        [none] Tiene una pausa prevista desde el { $day }. Hasta entonces, todo sigue según el plan.
       *[other] Tiene una pausa prevista. Empieza el { $day }. Su último día es el { $until }. Hasta que empiece, todo sigue según el plan.
    }
break-cancelled = De acuerdo. He quitado la pausa que empezaba el { $day }, y todo sigue según el plan.
break-on =
    { $until ->
        [none] Está en pausa, así que no le pido nada. Cuando vuelva, toque el botón o escriba: ya volví.
       *[other] Está en pausa hasta el { $until }, así que no le pido nada. ¿Vuelve antes? Toque el botón, o escriba: ya volví.
    }{ $done ->
        [0] { "" }
       *[other] { " " }Hoy lleva: { $done }.
    }
on-break = Está en pausa, así que no le pido nada. Cuando vuelva, escriba: ya volví
break-over =
    { $today ->
        [yes] Qué bueno que volvió. Hoy le pido tandas.
        [none] Qué bueno que volvió.
       *[no] Qué bueno que volvió. Le escribo en su próximo día de tandas.
    }
no-break = No está en pausa, así que no cambié nada.
break-by-clinician =
    { $until ->
        [none] De parte de { $clinician }: tiene una pausa desde hoy. No le pido nada hasta que vuelva. Para acabarla, toque el botón o escriba: ya volví
       *[other] De parte de { $clinician }: tiene una pausa desde hoy hasta el { $until }. No le pido nada. Para acabarla antes, toque el botón o escriba: ya volví
    }
break-ended-by-clinician =
    { $today ->
        [yes] De parte de { $clinician }: su pausa se acabó. Hoy le pido tandas.
        [none] De parte de { $clinician }: su pausa se acabó.
       *[no] De parte de { $clinician }: su pausa se acabó. Le escribo en su próximo día de tandas.
    }

## client: exercises beside the bouts

ask-companion =
    Hoy: { $companion }. { $measure ->
        [hold] Aguante { $amount ->
            [one] 1 segundo
           *[other] { $amount } segundos
        }
       *[other] { $amount ->
            [one] 1 vez
           *[other] { $amount } veces
        }
    }{ $rounds ->
        [one] { "" }
       *[other] , { $rounds } rondas
    }. Pare si le duele.
ask-companion-rounds = { $companion }: ¿cuántas rondas hizo del todo? Ponga el número, o: ninguna
companion-noted =
    { $done ->
        [0] De acuerdo. No anoté nada para { $day ->
            [none] hoy
           *[other] el { $day }
        }: { $companion }.
       *[other] Anotado{ $day ->
            [none] { "" }
           *[other] { " " }para el { $day }
        }: { $companion }{ $rounds ->
            [one] { "" }
           *[other] , { $done } de { $rounds } rondas
        }.
    }
companion-not-planned = Esto no está en su plan, así que no anoté nada: { $companion }.

## client: clearance that has ended, and a plan that is over

lapsed =
    { $because ->
        [break] Tuvo una pausa larga, así que { $clinician } tiene que decir que sí antes de que siga. Hasta entonces no le pido tandas. { $clinician } ya lo sabe.
        [review] Toca que { $clinician } mire su plan otra vez. Hasta entonces no le pido tandas. { $clinician } ya lo sabe.
       *[other] Gracias por decirlo. { $clinician } tiene que ver esto antes. No le pido tandas hasta que { $clinician } diga que sí. { $clinician } ya lo sabe.
    }
cleared-told = De parte de { $clinician }: puede seguir con su plan. Le escribo en su próximo día de tandas. Si siente un dolor nuevo, pare y dígamelo.
plan-ended = Su plan acabó el { $day }. No le pido tandas hasta que { $clinician } haga un plan nuevo. { $clinician } ya lo sabe. Ahora no tiene que hacer nada.

## client: what is no text

file-hurts = ¿Le duele algo o se cayó? Toque aquí.
only-command-read = Solo leí el comando. No anoté nada de lo que va detrás. Por favor, escríbalo aparte.
only-words-read = Solo leí sus palabras. No puedo ver ni oír lo que vino con ellas.
forwarded =
    { $asks ->
        [yes] Puede que estas palabras no sean suyas, así que no conté nada. Pero le tengo que preguntar. ¿Se cayó? Escriba: me caí
       *[no] Puede que estas palabras no sean suyas, así que no anoté nada. Por favor, dígamelo con sus palabras.
    }

## client: how it is done

how-to =
    Cómo se hace: { $exercise }
    { $steps }
    Apoyo: { $hold }
    Cuidado: { $avoid }
    Pare si le duele, y dígamelo.
how-to-asked =
    { how-to }{ $others ->
        [none] { "" }
       *[other]
            { "" }
            Para ver otro ejercicio suyo, tóquelo aquí:
    }

## client: the step test

step-due = Ya toca otra vez su prueba de pasos. Hágala solo con alguien a su lado. { $clinician } verá el resultado. ¿No es buen momento? Déjela para otro día.
step-allowed = { $clinician } le deja hacer la prueba de pasos en casa. Hágala solo con alguien a su lado. Para empezar, toque el botón o escriba: /prueba
step-how =
    Haga esta prueba solo con alguien a su lado. Pare si se marea o si le duele.
    Ponga 2 tiras de cinta planas en el suelo, en cruz. Así tiene 4 cuadros. Con palos se puede tropezar: use cinta plana. Lleve zapatos. Tenga apoyo cerca.
    Póngase en el cuadro 1, de cara al 2. El 3 está al lado del 2. El 4 está al lado del 1.
step-order =
    Pise en este orden: 2, 3, 4, 1. Y de vuelta: 4, 3, 2, 1. Mire siempre al mismo lado. Ponga los dos pies en cada cuadro.
    El reloj empieza con el primer pie en el cuadro 2. Para con el último pie de vuelta en el 1. Pruebe una vez y luego hágalo 2 veces. Vaya solo tan rápido como se sienta firme.
ask-step-ready = ¿Hay alguien con usted ahora?
ask-step-times = Hágalo 2 veces. Escriba los dos tiempos en segundos, así: 14,8 y 15,2. ¿Se le fue el equilibrio, tocó la cinta o pisó en otro orden? Esa vez no tiene tiempo. Escriba: sin tiempo. Si se cayó, escriba: me caí
ask-step-second = Tengo la primera: { $trials }. ¿Y la segunda? Escriba los segundos, o: sin tiempo
step-noted =
    Anotado: { $trials }. Vale el mejor tiempo. { $clinician } lo verá.{ $void ->
        [yes] { " " }¿Se cayó o se hizo daño? Escriba: me caí. O: me duele
       *[no] { "" }
    }
step-taken-back = Lo he quitado. Para anotar la prueba otra vez, escriba: /prueba
step-left = De acuerdo, hoy no. Si la quiere hacer otro día, escriba: /prueba
step-not-here = La prueba de pasos la hace con { $clinician }, no a solas en casa.
step-not-now = Ahora no haga la prueba de pasos, por favor.
step-unclear = Por favor, escriba los tiempos en segundos, así: 14,8 y 15,2. O escriba: sin tiempo
step-range = Un tiempo va de { $low } a { $high } segundos. Por favor, escríbalo otra vez, así: 14,8

## client: words and help

not-understood = No lo entendí, así que no anoté nada. Escriba un número, o una de estas palabras: más tarde, esta no, borrar, me duele, me caí, ayuda. ¿Paso sus palabras a { $clinician }? Si se hizo daño o está mal ahora, llame al { $emergency_number }.
passed-on = He pasado sus palabras a { $clinician }. Nadie lee este chat al momento.
not-passed-on = De acuerdo. No pasé nada.
from-clinician = Le escribe { $name }: “{ $words }”{ part-answer-hours } Nadie lee este chat al momento.
ask-reply = Lo próximo que escriba aquí le llega a { $clinician }. Nadie lee este chat al momento.{ part-answer-hours } En una emergencia, llame al { $emergency_number }.
reply-sent = Pasé sus palabras a { $clinician }. No anoté números de ellas. Nadie lee este chat al momento.
help-client =
    ¿Hizo una tanda? Escriba el número, así: 10
    ¿Ahora no? Escriba: más tarde. O: a las 4
    ¿Esta no? Escriba: esta no
    ¿El número no es ese? Escriba: borrar
    ¿Dolor o caída? Escriba: me duele. O: me caí
    Su día: /hoy. Sus horas: /horas. Una pausa: /pausa
    Sus datos: /datos. Salir de aquí: /salir
    Cómo se hace: /como

    { part-questions }{ part-answer-hours } En una emergencia, llame al { $emergency_number }. Nadie lee este chat al momento.
care-ended = Su atención aquí ha terminado, así que no anoté nada. { part-questions } En una emergencia, llame al { $emergency_number }.

## client: own data, and to leave

data =
    Esto se guarda de usted:
    Su nombre: { $name }. Su teléfono: { $phone ->
        [none] ninguno
       *[other] { $phone }
    }
    Tandas que me dijo: { $bouts }
    Lo que dijo de dolor, caídas y sus semanas: { $reports }
    Pruebas de pasos: { $tests }
    Y lo que escribió aquí, su plan, sus horas y lo que dijo de su salud. Lo ven { $clinician } y la clínica. Para salir de aquí, escriba: /salir
data-json = Todo lo que se guarda de usted. Este archivo es para un programa.
data-csv = Lo mismo en una tabla. Guarde estos archivos solo para usted.
data-fhir = Lo mismo, en la forma que lee el programa de una clínica.
data-by-practice = La clínica le dará todo en un archivo. Ya sabe que usted lo pide. { part-questions }
ask-leave =
    ¿Quiere salir de aquí del todo? Ya no le escribiré más, y aviso a { $clinician }.
    { $erased ->
        [yes] Lo que se guarda aquí de usted se borra { $days } días después.
       *[no] La clínica guarda lo que tiene, el tiempo que manda la ley.
    }
    No puedo borrar este chat. Usted puede borrarlo en la app. Quien lleva la app puede guardar una copia.
    ¿Solo un descanso? Escriba: /pausa
ask-leave-sure = ¿De verdad quiere salir? Después ya no le mando nada. Si me dice aquí que algo le duele o que se cayó, no le llega a nadie.
leave-not = De acuerdo. Se queda. Nada ha cambiado.
left =
    Ya ha salido. No le mando nada más. Aviso a { $clinician }.
    { $erased ->
        [yes] Lo que se guarda aquí de usted se borra en { $days } días.
       *[no] La clínica guarda lo que tiene, el tiempo que manda la ley.
    }
    Puede borrar este chat en la app.
    { part-questions } En una emergencia, llame al { $emergency_number }.
come-back = Usted salió de aquí. Para volver, pida un nuevo enlace en su clínica. { part-questions }

## client: the week as a picture

week-picture =
    Su semana, del { $first } al { $last }.
    Días hechos: { $days } de { $needed }.
own-title = Del { $first_short } al { $last_short }
own-movement = Sus { $movement }{ part-side }
own-days = Días hechos: { $days } de { $needed }
own-done = { $done } de { $total }
own-extra = hizo { $done }
own-ahead = plan: { $total }
own-rest = descanso
own-off = día libre
own-companion = { $companion }: { $done } de { $days } días

## everyone: strangers, roles, answers that do not fit

stranger = Este chat es solo para quien tiene una invitación de su clínica. Pida allí un enlace. Nadie lee lo que escriba aquí. En una emergencia, llame al número local de emergencias.
invitation-refused = Este enlace no funciona. Por favor, pida otro en su clínica. En una emergencia, llame al número local de emergencias.
only-private = Solo hablo en chats privados. Por favor, escríbame allí.
not-handled =
    Hubo un problema de nuestro lado. No anoté nada de su último mensaje o toque. La clínica está avisada. ¿Le duele algo o está mal? No haga más tandas y llame ya a la clínica{ $phone ->
        [none] { "" }
       *[other] : { $phone }
    }. En una emergencia, llame al { $emergency_number }. Nadie lee este chat al momento.
not-handled-paused =
    Hubo un problema de nuestro lado y no pude leer su último mensaje o toque. La clínica está avisada. ¿Le duele algo o está mal? Llame ya a la clínica{ $phone ->
        [none] { "" }
       *[other] : { $phone }
    }. En una emergencia, llame al { $emergency_number }. Nadie lee este chat al momento.
not-handled-now = Hubo un problema de nuestro lado. Su último mensaje o toque no cambió nada. Pruebe más tarde. En una emergencia, llame al número local de emergencias.
cannot-see-files =
    { $file ->
        [voice] No puedo oír esto, así que no anoté nada. Por favor, escríbalo.
        [audio] No puedo oír esto, así que no anoté nada. Por favor, escríbalo.
        [video_note] No puedo ver ni oír esto, así que no anoté nada. Por favor, escríbalo.
        [video] No puedo ver ni oír esto, así que no anoté nada. Por favor, escríbalo.
        [contact] Aquí no guardo números, así que no anoté nada. Para eso, llame a la clínica.
        [location] No guardé el lugar donde está. Para cambiar su hora, escriba: /horas
        [poll] No puedo contestar a esto, así que no anoté nada. Por favor, escriba lo que quiere decir.
        [dice] Solo puedo leer texto. No anoté nada. Por favor, escriba el número que hizo.
       *[other] Solo puedo leer texto. No anoté nada. Por favor, escríbalo.
    } En una emergencia, llame al { $emergency_number }.
question-over = Esta pregunta está cerrada. No cambié nada.
not-for-you = Este botón es para otra persona. No cambié nada.
ask-role = Su papel ahora: { $role }. ¿Qué papel quiere?
acting-as = Su papel ahora: { $role }.
role-not-yours = Ese papel no lo tiene usted. No cambié nada.
ask-language = Ahora le escribo en: { $language }. ¿En qué idioma le escribo?
language-kept = Desde ahora le escribo en: { $language }.
answer-number = Por favor, escriba un número de { $low } a { $high }.
answer-score = Por favor, escriba un número de 0 a 10.
answer-yes-no = Por favor, toque un botón, o escriba: sí o no.
answer-span = Por favor, escriba dos horas, así: 8:00 a 20:00
answer-spans = Por favor, escriba las horas así: 12:00 a 13:00. O escriba: ninguna
answer-spans-overlap = Esas horas se cruzan. Por favor, escríbalas otra vez, una detrás de otra.
answer-weekdays = Por favor, escriba los días, así: lunes, jueves. O escriba: flexible
answer-own-days = Por favor, escriba días de la semana, así: lunes, jueves
answer-day = Por favor, escriba una fecha, así: 12 de marzo
answer-zone =
    { $suggestions ->
        [none] No conozco ese lugar. Por favor, escriba una ciudad grande cerca de usted, así: Madrid
       *[other] No sé qué lugar es. ¿Quiere decir: { $suggestions }?
    }
answer-choice = Por favor, toque un botón, o escriba lo que dice.

## clinician: flags

flag =
    #{ $flag } { part-urgent }{ $kind }: { $name }
    Desde el { $since } ({ $zone })
flag-repeat = Sigue abierto: aviso #{ $flag }, ya enviado antes.
flag-cover = Usted hace la suplencia de { $clinician }. Esto sigue abierto.
flag-summary =
    { $count ->
        [one] 1 aviso que no es urgente.
       *[other] { $count } avisos que no son urgentes, sobre { $clients_count ->
            [one] 1 paciente
           *[other] { $clients_count } pacientes
        }.
    }
    { $flag_rows }{ $more ->
        [0] { "" }
       *[other] { "\u000A" }Y { $more } más: /pacientes
    }
    El silencio no quiere decir que no haya dolor.{ $lost ->
        [0] { "" }
        [one] { " " }No se pudo contactar con 1 paciente.
       *[other] { " " }No se pudo contactar con { $lost } pacientes.
    } Los avisos de dolor y de caída llegan aparte.
ask-outcome = ¿Cómo acabó el aviso #{ $flag }?
flag-closed = El aviso #{ $flag } está cerrado: { $outcome }. Una suspensión sigue hasta que usted la levante.
ask-flag-note = ¿Qué nota pone al aviso #{ $flag }? Se guarda con el aviso y nunca se envía al paciente.
flag-closed-before = El aviso #{ $flag } ya estaba cerrado. No se cambió nada.

## clinician: how-to cards

cards = Fichas de los ejercicios, como las ven los pacientes. Toque un ejercicio para ver su ficha o para darle una imagen propia.
own-card =
    { how-to }

    { $given ->
        [yes] Esta es su propia imagen.
       *[no] Esto es un dibujo.
    } Para poner otra, mándeme ahora una foto o un vídeo corto. Los pacientes la verán.
own-card-kept =
    Guardada. Los pacientes ven esto desde ahora:
    { how-to }
own-card-wrong-kind = Por favor, mándela como foto o vídeo, no como archivo.

## clinician: clients

caseload =
    { $count ->
        [0] No hay ningún paciente así. Escriba una parte del nombre, o: /pacientes para ver todos, /invitar para uno nuevo.
        [one] 1 paciente.
       *[other] { $count } pacientes. Primero quienes le necesitan: { $need }. Para buscar, escriba una parte del nombre.
    }{ $clients ->
        [none] { "" }
       *[other] { "\u000A\u000A" }{ $clients }
    }{ $pages ->
        [1] { "" }
       *[other] { "\u000A\u000A" }{ $searched ->
            [yes] Estos son los primeros. Escriba más del nombre.
           *[no] Página { $page } de { $pages }.
        }
    }
client-page =
    { $name } ({ $state })
    { $held ->
        [yes] En suspensión hasta que usted la levante.
       *[no]
            { $total ->
                [none] Hoy no hay tandas.
               *[other] Hoy: { $done } de { $total }{ part-side }.
            }
    }
    { $ceiling ->
        [none] Autorización: aún ninguna.
       *[other] Autorización: { $ceiling }.
    }
    { $plan ->
        [none] Aún no hay plan.
       *[other] Plan, versión { $plan }.
    }
    Teléfono: { $phone ->
        [none] ninguno
       *[other] { $phone }
    }
client-plan =
    Plan: { part-dose }, { $days ->
        [none] días flexibles
       *[other] { $days }
    }{ $beside ->
        [none] { "" }
       *[other]
            { "" }
            Complementarios: { $beside }
    }
client-week =
    Esta semana:
    { $digest_rows }
client-pain =
    { $scores ->
        [none] Ninguna cifra de dolor en 14 días. Eso no es “sin dolor”.
       *[other] Dolor (0 a 10), últimos 14 días: { $scores }
    }
client-step =
    Prueba de pasos del { $day }: { $best ->
        [none] no pudo completarla, sin tiempo
       *[other] { $best } s
    }{ $positive ->
        [yes] , cribado positivo
       *[no] { "" }
    }{ $slower ->
        [yes] , más lento que el mejor por más de lo fijado
       *[no] { "" }
    }.{ $best_before ->
        [none] { "" }
       *[other] { " " }El mejor hasta entonces: { $best_before } s.
    }{ $trend ->
        [slower] { " " }{ $change } s más lento que la anterior.
        [faster] { " " }{ $change } s más rápido que la anterior.
        [same] { " " }Igual que la anterior.
       *[none] { "" }
    }{ $due ->
        [none] { "" }
       *[other] { " " }La próxima toca el { $due }.
    }
step-page =
    Pruebas de pasos de { $name }: { $count }{ $tests ->
        [none] { "" }
       *[other] { "\u000A" }{ $tests }
    }
    { $home ->
        [yes] El paciente puede hacerla en casa.
       *[no] El paciente no puede hacerla en casa.
    } Es un cribado: no dice quién se va a caer.
ask-client-step = Prueba de pasos de { $name }: escriba los dos tiempos en segundos, así: 14,8 16,2. Para un intento sin tiempo, escriba: nula. Así: 15,01 nula
client-step-noted =
    Anotado para { $name }: { $trials }. { $best ->
        [none] No pudo completarla.
       *[other] Vale el mejor tiempo: { $best } s.
    } { $positive ->
        [yes] Cribado positivo.
       *[no] Cribado no positivo. Eso no descarta una caída.
    }{ $slower ->
        [yes] { " " }Más lento que el mejor por más de lo fijado.
       *[no] { "" }
    }
client-heard =
    { $since ->
        [none] Aún no ha llegado nada de este paciente.
       *[other] Último contacto: { $since } ({ $zone })
    }
client-flag =
    Abierto: #{ $flag } { part-urgent }{ $kind }, desde el { $since }{ $words ->
        [none] { "" }
       *[other] : “{ $words }”
    }
judged-days =
    { $closed ->
        [0] { $name } aún no tiene días cerrados. Un día se cierra al mediodía del día siguiente.
       *[other] Días cerrados de { $name }, primero el último. Toque uno para corregir cómo se valoró.
    }
ask-verdict =
    { $name }, { $day }: { $done } de { $total }{ part-side }, valorado “{ $cell }”{ $why ->
        [none] .
       *[other] { " " }({ $why }).
    }
    ¿Cómo debe quedar el día? Las repeticiones anotadas quedan como están.
verdict-kept = { $name }, { $day }: ahora “{ $cell }”. La semana y el resumen lo usan desde ahora.
client-break =
    En pausa ({ $away }) { $until ->
        [none] sin fecha de fin.
       *[other] hasta el { $until }.
    }
ask-client-break-reason = Una pausa para { $name } desde hoy. ¿Por qué?
ask-client-break-length = Una pausa para { $name } ({ $away }). ¿Cuánto dura, con hoy como primer día? Empieza cuando toque, y { $name } recibe un mensaje.
client-on-break =
    { $until ->
        [none] { $name } está en pausa sin fecha de fin, y ya lo sabe.
       *[other] { $name } está en pausa hasta el { $until }, y ya lo sabe.
    }{ $too_long ->
        [yes] { " " }Una pausa tan larga acaba con la autorización: tendría que dársela otra vez a { $name }.
       *[no] { "" }
    }
client-break-over = La pausa de { $name } se acabó, y { $name } ya lo sabe.
client-no-break = { $name } no está en pausa. No se cambió nada.
not-yours = No hay tal paciente entre los suyos.
client-ready =
    { $name } ya ha entrado y espera su autorización.
    Dolor habitual: { $usual_pain ->
        [none] sin dato
       *[other] { $usual_pain } de 10
    }
    { $readiness ->
        [none] Contestó “nada de esto” en cada pantalla.
       *[other]
            Contestó “sí, o no lo sé” a:
            { $readiness }
    }
    No se pide impacto antes de su autorización.
clearance-waits = { $name } aún espera su autorización. Antes no se pide impacto.
ask-ceiling =
    { $name }: ¿hasta qué impacto autoriza?
    Dolor habitual: { $usual_pain ->
        [none] sin dato
       *[other] { $usual_pain } de 10
    }
    { $readiness ->
        [none] Contestó “nada de esto” en cada pantalla.
       *[other]
            Contestó “sí, o no lo sé” a:
            { $readiness }
    }
    Son respuestas del paciente, no hallazgos.
clear-not-answered = { $name } aún no ha contestado las preguntas de salud. La autorización viene después.
cleared =
    { $plan ->
        [yes] Autorización de { $name }: { $ceiling }.
       *[no] Autorización de { $name }: { $ceiling }. Próximo paso: un plan.
    }
client-held = Todo el ejercicio de { $name } está suspendido, y { $name } ya lo sabe. Solo usted puede levantar la suspensión.
release-nothing = No hay nada en suspensión.
release-no-plan = No hay plan con el que seguir. Por favor, haga uno antes.
release-too-much = Al levantar la suspensión no se puede pasar de los { $total } al día de ahora. Para subir, cambie el plan.
ask-release =
    { $name }: ¿con qué total diario sigue? Antes: { part-dose }.
    Toque uno, o escriba un número menor.
ask-release-day = { $name } sigue con { $total }{ part-side } al día. ¿Desde cuándo?
released = { $name } puede seguir: { $total }{ part-side } al día, desde el { $day }. { $name } ya lo sabe.

## clinician: words to a client, and cover

ask-words = Lo próximo que escriba aquí le llega a { $name }, tal como lo escriba. Para dejarlo, toque un botón o escriba: /pacientes
words-sent = Enviado a { $name }.
words-too-long = Es demasiado largo, así que no se hizo nada. Por favor, envíe como mucho { $longest } caracteres.
write-blocked = { $name } ha bloqueado este chat, así que no se puede enviar nada. Teléfono: { $phone ->
        [none] ninguno
       *[other] { $phone }
    }
write-not-there = { $name } no está en este chat, así que no se puede enviar nada. Teléfono: { $phone ->
        [none] ninguno
       *[other] { $phone }
    }
from-client =
    { $name } le contesta: “{ $words }”
    Teléfono: { $phone ->
        [none] ninguno
       *[other] { $phone }
    }
cover-told =
    { $yours ->
        [yes] { $name } hace su suplencia
       *[no] Usted hace la suplencia de { $clinician }
    }{ $until ->
        [none] , hasta que la administración la termine
       *[other] , hasta el final del { $until }
    }. { $yours ->
        [yes] { $name } puede ver a sus pacientes y actuar por usted.
       *[no] Estos pacientes están detrás de los suyos: /pacientes
    }
cover-ended = { $name } ya no hace la suplencia de { $clinician }.

released-not-cleared = { $name } queda sin suspensión: { $total }{ part-side } al día, desde el { $day }. Pero la autorización ha caducado: no se pide nada, ni se le dice nada a { $name }, hasta que usted autorice otra vez.

## clinician: the digest

digest =
    Semana { $week }: del { $first } al { $last }. { $count ->
        [one] 1 paciente
       *[other] { $count } pacientes
    }, { $need ->
        [0] nadie le necesita
        [one] 1 le necesita
       *[other] { $need } le necesitan
    }.{ $open ->
        [0] { "" }
       *[other] { " " }Días aún abiertos: { $open }.
    }

    { $digest_rows }{ $pages ->
        [1] { "" }
       *[other] { "\u000A\u000A" }Página { $page } de { $pages }.
    }
digest-nobody = Aún no tiene pacientes.
ask-digest-time = Su resumen llega el { $weekday } a { $at }. Toque otro día u otra hora.
digest-time-kept = Desde ahora su resumen llega el { $weekday } a { $at }.

## clinician: plans

plan-card =
    Borrador para { $name }, aún sin guardar
    Movimiento: { $movement }
    Total diario: { $daily_total }{ part-side }
    Repeticiones por tanda: { $bout_reps }{ part-side }, como mucho { $bout_max }
    Días: { $weekdays ->
        [none] flexibles
       *[other] { $weekdays }
    }
    Días por semana: de { $days_min } a { $days_max }
    Días de descanso entre medio: { $rest_days }
    Horario: { $window }
    Horas de silencio: { $quiet ->
        [none] ninguna
       *[other] { $quiet }
    }
    Separación entre tandas: { $gap_minutes } min por lo menos
    Inicio: { $start }
    Revisión: { $review ->
        [none] ninguna
       *[other] { $review }
    }
    Fin: { $end ->
        [none] ninguno
       *[other] { $end }
    }
    Nota al paciente: { $note ->
        [none] ninguna
       *[other] { $note }
    }
    Complementarios: { $beside ->
        [none] ninguno
       *[other] { $beside }
    }
ask-plan-movement =
    { $movements ->
        [none] No hay ningún movimiento dentro de la autorización.
       *[other] ¿Qué movimiento?
    }
ask-plan-daily-total = ¿Cuántas repeticiones al día en total? Toque una o escriba un número.
ask-plan-bout-reps = ¿Cuántas repeticiones por tanda?
ask-plan-bout-max = ¿Cuántas repeticiones por tanda como mucho, al recuperar? Si es lo mismo que la tanda, no hay tandas mayores.
ask-plan-weekdays = ¿Qué días? Toque una opción, o escriba los días, así: lunes, jueves
ask-plan-days-min = ¿Cuántos días por semana por lo menos?
ask-plan-days-max = ¿Cuántos días por semana como mucho?
ask-plan-rest-days = ¿Cuántos días de descanso entre dos días de carga?
ask-plan-window = ¿De qué hora a qué hora puede haber tandas? Escríbalo así: 8:00 a 20:00
ask-plan-quiet = ¿A qué horas no se debe pedir nada? Escríbalo así: 12:00 a 13:00, 15:00 a 15:30
ask-plan-gap-minutes = ¿Cuántos minutos por lo menos entre dos tandas?
ask-plan-start = ¿Desde qué día? Escríbalo así: 12 de marzo
ask-plan-review = ¿Cuándo va a revisar el plan? Escríbalo así: 12 de marzo. O escriba: ninguno
ask-plan-end = ¿Qué día acaba? Escríbalo así: 12 de marzo. O escriba: ninguno
ask-plan-note = ¿Qué nota debe ver el paciente con el plan?
ask-plan-companions =
    ¿Qué ejercicios hay además del impacto? Ahora: { $beside ->
        [none] ninguno
       *[other] { $beside }
    }
    Toque uno para ponerlo o quitarlo. O escríbalo con sus números, así: plancha a gatas 5 s, 3 rondas, 2 días
plan-beside = Complementarios: { $beside }
plan-first-day =
    Primer día, { $day }, { $movement }{ part-side }:
    { $bouts }
dose-table =
    Formas de repartir el día (teóricas, de datos de animales, no son una meta):
    { $rows }
plan-estimate = La fuerza de { $movement } ({ $force } veces el peso del cuerpo) es una estimación: no se encontró un valor publicado. Al guardar, la acepta para este paciente.
plan-save =
    { $estimate ->
        [yes] ¿Guarda este plan y acepta la estimación?
       *[no] ¿Guarda este plan?
    }
plan-saved =
    La versión { $version } del plan de { $name } está guardada. Primer día: { $day }.{ $cleared ->
        [yes] { "" }
       *[no] { " " }No se pide impacto antes de su autorización.
    }{ $joined ->
        [yes] { "" }
       *[no] { " " }{ $name } aún no ha entrado.
    }
plan-cancelled = El borrador se ha descartado. No se cambió nada.
fault-unknown-movement = { $field }: no se conoce.{ part-values }
fault-above-ceiling =
    { $most_force ->
        [none] { $field }: { $level } supera la autorización: { $ceiling }.{ part-values }
       *[other] { $field }: { $level } con { $force } veces el peso del cuerpo supera la autorización: { $ceiling }, hasta { $most_force }.{ part-values }
    }
fault-estimate-not-accepted = { $field }: su fuerza de { $force } veces el peso del cuerpo es una estimación que usted no ha aceptado.{ part-values }
fault-before-start = { $field }: es antes del inicio, { $start }.{ part-values }
fault-after-end = { $field }: es después del fin, { $end }.{ part-values }
fault-out-of-bounds = { $field }: puede ser de { $low } a { $high }.{ part-values }
fault-not-weekdays = { $field }: un día está dos veces o no es un día de la semana.{ part-values }
fault-below-bout = { $field }: es menos que las { $bout } repeticiones de una tanda.{ part-values }
fault-below-minimum = { $field }: es menos que el mínimo de { $days_min }.{ part-values }
fault-no-room-for-rest =
    { $rest_days ->
        [one] { $field }: demasiados para 1 día de descanso entre días de carga.{ part-values }
       *[other] { $field }: demasiados para { $rest_days } días de descanso entre días de carga.{ part-values }
    }
fault-not-as-many-as-days = { $field }: elegidos { $count }, pero el plan dice de { $days_min } a { $days_max } por semana.{ part-values }
fault-too-close =
    { $rest_days ->
        [one] { $field }: demasiado juntos para 1 día de descanso entre días de carga, también en el fin de semana.{ part-values }
       *[other] { $field }: demasiado juntos para { $rest_days } días de descanso entre días de carga, también en el fin de semana.{ part-values }
    }
fault-no-common-hours = { $field }: el { $weekday } no cabe ninguna tanda entre { $start } y { $end } y las horas del paciente.{ part-values }
fault-too-many-reps =
    { $field }: en un día solo { $bouts ->
        [one] cabe 1 tanda
       *[other] caben { $bouts } tandas
    }. Valdría cualquiera de estos:
    - total diario { $total }{ $bout ->
        [none] { "" }
       *[other]
            { "" }
            - como mucho { $bout } repeticiones por tanda
    }{ $gap ->
        [none] { "" }
       *[other]
            { "" }
            - una separación de { $gap } minutos
    }
help-clinician =
    /pacientes muestra sus pacientes; escriba una parte del nombre para buscar.
    /invitar hace un enlace para un paciente nuevo.
    /fichas muestra cómo se explica cada ejercicio, y recibe sus propias imágenes.
    Los avisos llegan solos. Cierre cada uno con su resultado.
welcome-clinician = Hola, { $name }. Ha entrado en { $practice } como terapeuta. Empiece con /invitar o /pacientes.
records-restored = Los datos se recuperaron de una copia hecha el { $since }. Lo que se escribió aquí desde entonces hasta ahora se perdió, también sobre dolor o una caída. Por favor, pregunte a sus pacientes, y mire lo que usted hizo en ese tiempo: paradas, permisos para seguir, planes.
answers-lost = Estuve sin conexión desde el { $since } hasta ahora. El servicio de chat guarda lo que se escribe solo un día. Puede que se hayan perdido respuestas, también sobre dolor o una caída. Por favor, pregunte a sus pacientes.

## clinician: the week as picture and file

digest-picture =
    Semana { $week }, del { $first } al { $last }.
    { $count ->
        [one] 1 paciente
       *[other] { $count } pacientes
    }, { $need ->
        [0] nadie le necesita.
        [one] 1 le necesita.
       *[other] { $need } le necesitan.
    }
digest-file =
    Semana { $week }, del { $first } al { $last }, como tabla para una hoja de cálculo.
    { $count ->
        [one] 1 paciente
       *[other] { $count } pacientes
    }. Lleva datos de salud: guárdela donde nadie más la lea.

## report: words drawn in pictures and files

picture-title = Semana { $week }: { $first_short } a { $last_short }
picture-by = { $clinician }, { $practice }
picture-made =
    A fecha de { $made_at_short } ({ $zone }){ $open ->
        [0] { "" }
        [one] , 1 día abierto
       *[other] , { $open } días abiertos
    }
picture-need-you =
    { $count ->
        [one] 1 paciente le necesita
       *[other] { $count } pacientes le necesitan
    }
picture-others =
    { $count ->
        [0] Ningún otro paciente
        [one] 1 paciente más
       *[other] { $count } pacientes más
    }
picture-weekday = { $weekday_short }
picture-days = días
picture-pain = dolor
picture-cell = { $cell }
picture-why = { $why }
picture-mark = { $mark }
picture-figures = días: cuentan, de los necesarios. dolor: el peor, 0 a 10.
report-period = Del { $start } al { $end }
report-by = { $clinician }, { $practice }. Hecho: { $made_at } ({ $zone }).
report-plan = Plan
report-no-plan = Ningún plan en este periodo.
report-dose = { part-dose }, como mucho { $bout_max } de una vez.
report-days =
    Por lo menos { $days_min }, como mucho { $days_max } días por semana: { $weekdays ->
        [none] flexibles
       *[other] { $weekdays }
    }. Horario: { $window }. Separación: { $gap_minutes } min por lo menos.
report-dates =
    Desde el { $start }. Revisión: { $review ->
        [none] ninguna
       *[other] { $review }
    }. Fin: { $end ->
        [none] ninguno
       *[other] { $end }
    }.
report-ceiling = Autorización: { $ceiling }.
report-note = Nota al paciente: { $note }
report-weeks = Semanas
report-week = Semana
report-days-head = Días
report-reps-head = Repet.
report-bouts-head = Tandas
report-spread-head = Reparto*
report-pain-head = Dolor
report-excused-head = Justif.
report-open-head = Pend.
report-all = Suma
report-pain = Peor dolor
report-pain-row =
    { $score } de 10, { $day }{ $place ->
        [none] { "" }
       *[other] , { $place }
    }
report-falls = Caídas
report-fall-row =
    { $day }: { $injured ->
        [yes] con lesión
        [no] no habla de lesión
       *[other] no se sabe si hay lesión
    }
report-flags = Avisos
report-flag-row =
    #{ $flag } { $day_short }: { $kind }. { $outcome ->
        [none] Abierto.
       *[other] { $outcome }.
    }
report-steps = Pruebas de pasos, la última primero: { $results }
report-holds = Suspensiones
report-hold-row =
    Del { $day } { $until ->
        [none] hasta ahora
       *[other] al { $until }
    }
report-none = ninguno
report-more = … y { $count } más
report-legend = Repeticiones: hechas, entre paréntesis como mucho el total diario, de las prescritas. Días: cuentan, de los necesarios. Dolor: el peor de 0 a 10. Los días justificados no entran en ninguna cifra; los pendientes aún pueden cambiar.
report-theory = * El reparto es teórico, de datos de animales: lo bien que se repartieron las tandas en el día, frente a las horas del propio plan. No es una meta.
report-caution = No es un diagnóstico. El dolor, las caídas y las repeticiones son lo que contó el paciente; no contestar no es “sin dolor”. Lo que se siga de esta hoja lo decide un profesional con licencia.

## admin: the practice

flag-admin = #{ $flag } { part-urgent }Un aviso sobre { $name } está abierto, y no se puede contactar con su terapeuta en el chat. Por favor, procure que un terapeuta lo vea ya.
flag-still-open = #{ $flag } Urgente. Un aviso sobre { $name } sigue abierto: { $clinician } no lo ha cerrado. Por favor, procure que un terapeuta lo vea ya.
staff-unreachable = { $name } ({ $role }) ha bloqueado este chat o no se le puede contactar. Los mensajes a { $name } esperan.
set-aside =
    La entrada { $update } no se pudo tratar y quedó aparte. Las demás siguen.{ $waiting ->
        [one] { "" }
       *[other] { " " }Ahora hay { $waiting } aparte.
    } Quien la envió lo sabe. Por favor, avise a quien lleva el servidor.
aside =
    { $count ->
        [0] No hay nada aparte. Todo mensaje y todo toque se trató.
        [one]
            1 entrada no se pudo tratar. Llegó el { $since }.
            No cambió nada, y quien la envió lo sabe. Cuando el servidor esté arreglado, haga que se intente otra vez.
       *[other]
            { $count } entradas no se pudieron tratar. La más antigua llegó el { $since }.
            No cambiaron nada, y quienes las enviaron lo saben. Cuando el servidor esté arreglado, haga que se intenten otra vez.
    }
aside-one =
    Entrada { $update }, { $name ->
        [none] de alguien que no es de la clínica
       *[other] de { $name }
    }, { $since }. No se pudo tratar.{ $wrote_since ->
        [yes] { " " }{ $name } ha escrito o tocado algo después. Lo que envió otra vez contaría dos veces.
       *[other] { "" }
    }
ask-drop =
    ¿Descartar la entrada { $update }, { $name ->
        [none] de alguien que no es de la clínica
       *[other] de { $name }
    }, { $since }? Entonces no se leerá nunca, aunque trate de dolor. ¿Ha preguntado alguien qué era?
aside-again =
    { $count ->
        [one] Se intenta ahora otra vez 1 entrada.
       *[other] Se intentan ahora otra vez { $count } entradas, en orden.
    } Vale la hora en que se envió cada una. Si no sale bien, recibe un aviso.
aside-dropped = La entrada { $update } se descartó.
aside-over = Eso ya no está aparte. No cambié nada.
welcome-admin = Hola, { $name }. Ha entrado en { $practice } en la administración. Empiece con /ajustes, luego /invitar.
numbers-missing = Falta el teléfono de la clínica o el número de emergencias. No se piden tandas a nadie antes de tener los dos.
help-admin =
    /personas muestra quién está en la clínica; escriba una parte del nombre para buscar.
    /invitar hace un enlace para alguien nuevo.
    /ajustes muestra y cambia los ajustes de la clínica.
    /fichas muestra cómo se explica cada ejercicio, y recibe sus propias imágenes.
    /apartados muestra los mensajes y toques que no se pudieron tratar.
settings =
    Los ajustes de la clínica. Toque uno para cambiarlo.
    { $settings }
ask-setting =
    { $setting }. Ahora: { $value ->
        [none] nada
       *[other] { $value }{ $unit }
    }
    { $does }
    { $low ->
        [none] Escriba el nuevo valor, o: /ajustes para volver.
       *[other] Escriba un número de { $low } a { $high }, o: /ajustes para volver.
    }
setting-kept =
    Anotado. { $setting }: { $value }{ $unit }
    Todos los ajustes: /ajustes
setting-unknown = No hay un ajuste { $name }.
setting-out-of-bounds = { $setting }: por favor, escriba un número de { $low } a { $high }.
setting-pain-order = { $setting }: “seguir” tiene que quedar por debajo de “parar”. No se cambió nada.
setting-bad-zone = { $setting }: por favor, escriba una zona, así: Europe/Madrid
setting-bad-window = { $setting }: por favor, escriba las horas así: 08:00-20:00
setting-bad-week-start = { $setting }: por favor, escriba un día, así: lunes
setting-bad-work-hours = { $setting }: por favor, escriba las horas así: 09:00-17:00
setting-bad-work-days = { $setting }: por favor, escriba los días, así: lunes, martes, viernes
setting-bad-erase-left = { $setting }: por favor, escriba: sí o no
setting-bad-files-in-chat = { $setting }: por favor, escriba: sí o no
setting-bad-number = { $setting }: por favor, escriba un número al que se pueda llamar.
setting-too-long = { $setting }: por favor, escriba como mucho { $longest } caracteres.
cover =
    { $covers ->
        [none] Ahora nadie hace la suplencia de { $clinician }.
       *[other]
            Hace la suplencia de { $clinician }:
            { $covers }
    }
    { $colleagues ->
        [none] No hay otro terapeuta que pueda.
       *[other] Toque un nombre para empezar una suplencia o cambiar su fin.
    }
ask-cover-until = { $name } hace la suplencia de { $clinician }: ¿hasta cuándo? Toque una opción, o escriba una fecha: es el último día. O escriba: ninguno
cover-kept =
    { $name } hace la suplencia de { $clinician }, { $until ->
        [none] hasta que usted la termine
       *[other] hasta el final del { $until }
    }. Los dos lo saben.
cover-is-past = Ese día ya pasó. Por favor, escriba hoy o un día posterior.
people =
    { $searched ->
        [yes] { $count ->
            [one] 1 persona con ese nombre.
           *[other] { $count } personas con ese nombre.
        }
       *[no] { $count ->
            [one] 1 persona en la clínica.
           *[other] { $count } personas en la clínica. Para buscar, escriba una parte del nombre.
        }
    }{ $pages ->
        [none] { "" }
        [1] { "" }
       *[other] { "\u000A" }{ $searched ->
            [yes] Estas son las primeras. Escriba más del nombre.
           *[no] Página { $page } de { $pages }.
        }
    }
person =
    { $name }, { $role } ({ $state }){ $clinician ->
        [none] { "" }
       *[other]
            { "" }
            Terapeuta: { $clinician }
    }
no-such-person = No hay tal persona.
no-such-client = No hay tal paciente.
ask-invite-role = ¿A quién invita?
ask-invite-name = ¿Nombre? ({ $role }) Basta el nombre de pila o un alias.
ask-invite-clinician = ¿Quién trata a { $name }?
invite-name-length = Por favor, escriba un nombre de 1 a { $longest } caracteres.
invite-no-clinician = Un paciente necesita un terapeuta. Por favor, invite antes a un terapeuta.
invitation =
    Enlace para { $name } ({ $role }). Vale una vez, durante { $days ->
        [one] 1 día
       *[other] { $days } días
    }. Envíelo solo a { $name }:
    { $link }
ask-discharge = ¿Termina aquí la atención de { $name }? Todo se para. El historial queda.
ask-erase = ¿Borrar todo lo que se guarda de { $name } (paciente { $person })? No se puede deshacer. Vea antes cuánto tiempo manda guardarlo la ley. El registro de cambios guarda un número y ningún valor.
erased = Se borró todo lo que se guardaba del paciente { $person }. Las copias de seguridad de antes de hoy aún lo tienen{ $until ->
        [none] { "" }
       *[other] , la última hasta el { $until }
    }: bórrelas antes de ese día. El servicio de chat puede guardar su copia.
data-wanted = { $name } pide una copia de todos sus datos. En el servidor: boutwise export --client { $person } --format json --out ARCHIVO
discharged = La atención de { $name } aquí ha terminado. Ya no se envía nada.

## button: bouts

button-did-all = Hice todo
button-fewer = Hice menos
button-later = Más tarde
button-skip = Esta no
button-hurts = Algo me duele
button-how = Ver cómo se hace
button-exercise = { $exercise }
button-fell = Me caí
button-number = { $number }
button-yes-number = Sí, { $number }
button-yes = Sí
button-no = No

## button: pain and falls

button-mistake = Lo toqué por error
button-no-sign = Nada de esto
button-sign-chest = { name-sign-chest }
button-sign-faint = { name-sign-faint }
button-sign-breath = { name-sign-breath }
button-sign-one-side-weak = { name-sign-one-side-weak }
button-sign-face-speech = { name-sign-face-speech }
button-sign-head-knock = { name-sign-head-knock }
button-sign-no-weight = { name-sign-no-weight }
button-sign-cannot-get-up = { name-sign-cannot-get-up }
button-sign-back-weak-legs = Espalda más piernas u orina
button-sign-calf = { name-sign-calf }
button-sign-eye = { name-sign-eye }
button-sign-sudden-back = { name-sign-sudden-back }
button-sign-dizzy = { name-sign-dizzy }
button-sign-groin-thigh = { name-sign-groin-thigh }
button-sign-foot-shin-spot = { name-sign-foot-shin-spot }
button-sign-leak = { name-sign-leak }
button-sign-sore = { name-sign-sore }
button-place-back = { name-place-back }
button-place-hip = { name-place-hip }
button-place-groin = { name-place-groin }
button-place-thigh = { name-place-thigh }
button-place-knee = { name-place-knee }
button-place-shin = { name-place-shin }
button-place-foot = { name-place-foot }
button-place-elsewhere = { name-place-elsewhere }
button-when-during = { name-when-during }
button-when-after = { name-when-after }
button-when-next-morning = { name-when-next-morning }
button-when-other = { name-when-other }
button-new = Es nuevo
button-known = Ya lo conozco
button-sharper = Más agudo
button-as-usual = No más agudo
button-fall-today = { name-when-today }
button-fall-yesterday = { name-when-yesterday }
button-fall-earlier = { name-when-earlier }
button-doing-exercise = { name-doing-exercise }
button-doing-walking = { name-doing-walking }
button-doing-stairs = { name-doing-stairs }
button-doing-getting-up = { name-doing-getting-up }
button-doing-other = { name-doing-other }

## button: joining

button-agree = Acepto
button-not-agree = No acepto
button-none-of-these = Nada de esto
button-page-back = Volver
button-page-on = Más
button-digest-time = Día y hora
button-weekday = { $weekday_short }
button-hour = { $at_short }
button-keep-days = Sí, me van bien
button-other-days = Otros días
button-week-day = { part-chosen }{ $day_short }
button-own-day = { part-chosen }{ $weekday_short }
button-week-none = No, nada de esto
button-week-pain = Dolor
button-week-fall = Una caída
button-week-leak = Pérdida de orina
button-yes-or-unsure = Sí, o no lo sé
button-that-is-all = Eso es todo
button-keep = Sí, me van bien
button-change-zone = Cambiar zona
button-change-hours = Cambiar horas
button-change-quiet = Cambiar horas de silencio
button-change-days = Cambiar días
button-pass-on = Sí, páselas
button-ready-broken-bone = { part-chosen }Hueso roto, 12 semanas
button-ready-spine-fracture = { part-chosen }Columna, o varios huesos
button-ready-surgery = { part-chosen }Operación, 12 semanas
button-ready-two-falls = { part-chosen }2 caídas o más
button-ready-bone-injections = { part-chosen }Dejé inyecciones de huesos
button-ready-height = { part-chosen }Menos estatura
button-ready-heart = { part-chosen }Corazón, presión o aire
button-ready-dizzy-spells = { part-chosen }Mareos o desmayos
button-ready-numb-feet = { part-chosen }Pies dormidos
button-ready-eye = { part-chosen }Ojo operado o retina
button-ready-blood-thinners = { part-chosen }Anticoagulantes
button-ready-new-pain = { part-chosen }Dolor en ingle o espalda
button-ready-joint = { part-chosen }Articulación mala
button-ready-leaking = { part-chosen }Orina o peso abajo
button-ready-pregnant = { part-chosen }Embarazo
button-ready-replacement = { part-chosen }Prótesis de cadera u otra
button-ready-steroids = { part-chosen }Cortisona durante meses

## button: breaks

button-away-travel = { name-away-travel }
button-away-illness = { name-away-illness }
button-away-other = { name-away-other }
button-health-again = Mi salud ha cambiado
button-break-today = Solo hoy
button-break-3 = 3 días
button-break-7 = 1 semana
button-break-14 = 2 semanas
button-break-unsure = Aún no lo sé
button-no-break = Sin pausa
button-break-one-day = 1 día
button-cancel-break = Mejor sin pausa
button-another-break = Otra pausa
button-back-from-break = Ya volví
button-change-break = Cambiar la duración
button-break = Pausa
button-end-break = Terminar la pausa

## button: companions

button-did-companion =
    { $rounds ->
        [one] Lo hice
       *[other] Hice las { $rounds } rondas
    }
button-some-rounds =
    { $done ->
        [one] 1 ronda
       *[other] { $done } rondas
    }
button-not-today = Hoy no

## button: clinician

button-use-drawing = Volver al dibujo
button-close-flag = Cerrar aviso
button-close-flag-number = Cerrar aviso #{ $flag }
button-write = Escribir
button-reply = Contestar
button-open-client = Ver paciente
button-all-clients = Todos los pacientes
button-client =
    { $flags ->
        [0] { $name }
        [one] 1 aviso: { $name }
       *[other] { $flags } avisos: { $name }
    }
button-clear = Autorización
button-plan = Plan
button-hold = Suspender todo
button-closed-days = Días cerrados
button-judged-day = { $day_short }: { $cell }
button-verdict-counted = Cuenta
button-verdict-excused = Justificado
button-verdict-not = No cuenta
button-release = Levantar suspensión
button-outcome-called = { name-outcome-called }
button-outcome-referred = { name-outcome-referred }
button-outcome-advised = { name-outcome-advised }
button-outcome-no-action = { name-outcome-no-action }
button-outcome-note = { name-outcome-note }
button-ceiling-none = { name-ceiling-none }
button-ceiling-low = { name-ceiling-low }
button-ceiling-moderate = { name-ceiling-moderate }
button-ceiling-high = { name-ceiling-high }
button-field-movement = { name-field-movement }
button-field-daily-total = { name-field-daily-total }
button-field-bout-reps = { name-field-bout-reps }
button-field-bout-max = { name-field-bout-max }
button-field-weekdays = { name-field-weekdays }
button-field-days-min = { name-field-days-min }
button-field-days-max = { name-field-days-max }
button-field-rest-days = { name-field-rest-days }
button-field-window = { name-field-window }
button-field-quiet = { name-field-quiet }
button-field-gap-minutes = { name-field-gap-minutes }
button-field-start = { name-field-start }
button-field-review = { name-field-review }
button-field-end = { name-field-end }
button-field-note = { name-field-note }
button-movement = { $movement }
button-weekdays = { $days_short }
button-flexible = Flexibles
button-none = Ninguno
button-field-companions = { name-field-companions }
button-companion = { $companion }
button-preview = Vista previa
button-back = Volver
button-change = Cambiar
button-cancel = Cancelar
button-save = Guardar
button-save-with-yes = Guardar, acepto la estimación
button-dose-half = { $total } al día
button-dose-as-before = { $total } al día, como antes
button-from-today = Desde hoy
button-from-tomorrow = Desde mañana

## button: the step test

button-step-start = Ver cómo se hace
button-step-ready = Sí, hay alguien a mi lado
button-step-later = Ahora no
button-step-take-back = Quitarlo
button-step-tests = Pruebas de pasos
button-step-log = Anotar prueba de pasos
button-step-no-time = Las dos sin tiempo
button-step-home = Permitirla en casa
button-step-not-home = Ya no en casa

## button: own data, and to leave

button-data-files = Enviarme todo
button-stay = No, me quedo
button-leave = Salir
button-leave-sure = Sí, salir del todo

## button: admin and roles

button-language = { $language }
button-setting = { $setting }
button-role-client = Paciente
button-role-clinician = Terapeuta
button-role-admin = Administración
button-person = { $role }: { $name }
button-invite-again = Enlace nuevo
button-discharge = Terminar atención
button-erase = Borrar los datos
button-yes-erase = Sí, borrar todo
button-yes-discharge = Sí, terminar
button-cover = Suplencia
button-cover-by = { $name }, suplencia
button-end-cover = Terminar la de { $name }
button-to-person = Volver
button-no-end = Sin fin
button-weeks =
    { $number ->
        [one] 1 semana
       *[other] { $number } semanas
    }
button-all-people = Todas las personas
button-set-aside = Todo lo apartado
button-aside =
    { $name ->
        [none] No es de la clínica
       *[other] { $name }
    }: { $update }
button-try-again = Intentar otra vez
button-try-all = Intentar todo otra vez
button-drop = Descartar
button-yes-drop = Sí, descartar

## command: the chat's menu

command-today = Cómo va hoy
    .name = hoy
command-week = Su semana
    .name = semana
command-how = Cómo se hace su ejercicio
    .name = como
command-hurts = Algo me duele
    .name = duele
command-undo = Borrar el último número
    .name = borrar
command-health = Decir que su salud ha cambiado
    .name = salud
command-break = Hacer una pausa
    .name = pausa
command-back = Terminar su pausa
    .name = volver
command-steptest = La prueba de pasos
    .name = prueba
command-times = Ver o cambiar sus horas
    .name = horas
command-data = Lo que se guarda de usted
    .name = datos
command-leave = Salir de aquí del todo
    .name = salir
command-help = Ayuda, y a quién llamar
    .name = ayuda
command-clients = Sus pacientes
    .name = pacientes
command-digest = Cómo va la semana
    .name = resumen
command-cards = Fichas de ejercicios y sus imágenes
    .name = fichas
command-invite = Invitar a alguien
    .name = invitar
command-people = Quién está en la clínica
    .name = personas
command-settings = Los ajustes de la clínica
    .name = ajustes
command-aside = Lo que no se pudo tratar
    .name = apartados
command-language = Cambiar el idioma (language)
    .name = idioma

## name: movements

# common practice, no source: the words of a gym in Spain and in America; a native clinician should look
name-movement-marching = pasos de marcha
    .one = paso de marcha
name-movement-stepping-jack = pasos de tijera
    .one = paso de tijera
name-movement-gentle-heel-drop = bajadas suaves de talón
    .one = bajada suave de talón
name-movement-stomp = pisadas fuertes
    .one = pisada fuerte
name-movement-small-jump = saltos pequeños
    .one = salto pequeño
name-movement-hop = saltos en un pie
    .one = salto en un pie
name-movement-jumping-jack = saltos de tijera
    .one = salto de tijera
name-movement-firm-heel-drop = bajadas firmes de talón
    .one = bajada firme de talón

## name: how-to cards (common practice, no source; 3 cues, where to hold on, what to avoid)

name-card-marching =
    1. Póngase de pie y agárrese.
    2. Suba una rodilla, hasta donde pueda sin esfuerzo.
    3. Baje ese pie. Suba la otra rodilla.
    .hold = una mano en un mueble firme y alto, o en una silla pesada.
    .avoid = no se eche hacia atrás. No gire el cuerpo.
name-card-stepping-jack =
    1. Póngase de pie, con los pies juntos.
    2. Dé un paso a un lado. Suba los brazos.
    3. Vuelva al centro. Baje los brazos. Ahora, al otro lado.
    .hold = un mueble firme y alto, a mano. Si no se siente firme, agárrese.
    .avoid = no se incline. No tenga prisa. El suelo, seco y sin cosas.
name-card-gentle-heel-drop =
    1. Póngase de pie y agárrese.
    2. Suba poco a poco a la punta de los pies.
    3. Baje los talones con suavidad.
    .hold = las dos manos en un mueble firme y alto, o en una silla pesada.
    .avoid = no se incline ni se doble. No estire del todo las rodillas.
name-card-stomp =
    1. Póngase de pie y agárrese.
    2. Suba un poco un pie.
    3. Baje todo el pie, plano y con fuerza. Haga todos de un lado y luego del otro.
    .hold = una mano en un mueble firme y alto, o en una silla pesada.
    .avoid = no pise solo con el talón o con la punta. No se incline.
name-card-small-jump =
    1. Póngase de pie, con las rodillas un poco dobladas.
    2. Dé un salto muy bajo, casi sin dejar el suelo.
    3. Caiga con suavidad. Doble las rodillas al caer.
    .hold = las dos manos en un mueble firme y alto.
    .avoid = no caiga con las rodillas rectas. No doble ni gire la espalda.
name-card-hop =
    1. Póngase sobre un pie, con la rodilla un poco doblada.
    2. Dé un salto muy bajo, casi sin dejar el suelo.
    3. Caiga suave. Haga todos de un lado y luego del otro.
    .hold = las dos manos en un mueble firme y alto.
    .avoid = no caiga con la rodilla recta. No lo haga si no se siente firme.
name-card-jumping-jack =
    1. Póngase de pie, con los pies juntos.
    2. Dé un salto y abra los pies. Suba los brazos.
    3. Dé un salto y junte los pies. Baje los brazos. Doble las rodillas al caer.
    .hold = un mueble firme y alto, a mano.
    .avoid = no caiga con las rodillas rectas. El suelo, seco y sin cosas.
name-card-firm-heel-drop =
    1. Póngase de pie y agárrese.
    2. Suba a la punta de los pies, lo más alto que pueda.
    3. Deje caer los talones, hasta notar el golpe.
    .hold = las dos manos en un mueble firme y alto, o en una silla pesada.
    .avoid = no se incline ni se doble. No estire del todo las rodillas.
name-card-back-raise =
    1. Échese boca abajo, con una almohada bajo la barriga.
    2. Suba un poco el pecho. Mire al suelo.
    3. Baje poco a poco. Descanse.
    .hold = una silla pesada cerca, para ponerse de pie.
    .avoid = no suba mucho ni doble el cuello hacia atrás. Siga respirando.
name-card-hover-hold =
    1. Póngase a gatas. Apoye la punta de los pies.
    2. Suba un poco las dos rodillas del suelo. Aguante.
    3. Baje las rodillas. Descanse.
    .hold = una silla pesada cerca, para ponerse de pie.
    .avoid = no doble la espalda. Siga respirando.

## name: calendar

name-weekday-0 = lunes
    .short = lun
name-weekday-1 = martes
    .short = mar
name-weekday-2 = miércoles
    .short = mié
name-weekday-3 = jueves
    .short = jue
name-weekday-4 = viernes
    .short = vie
name-weekday-5 = sábado
    .short = sáb
name-weekday-6 = domingo
    .short = dom
name-month-1 = enero
    .short = ene
name-month-2 = febrero
    .short = feb
name-month-3 = marzo
    .short = mar
name-month-4 = abril
    .short = abr
name-month-5 = mayo
    .short = may
name-month-6 = junio
    .short = jun
name-month-7 = julio
    .short = jul
name-month-8 = agosto
    .short = ago
name-month-9 = septiembre
    .short = sep
name-month-10 = octubre
    .short = oct
name-month-11 = noviembre
    .short = nov
name-month-12 = diciembre
    .short = dic

## name: pain and falls

name-sign-chest = Dolor o presión en el pecho
name-sign-faint = Desmayo
name-sign-breath = Cuesta respirar
name-sign-one-side-weak = Un lado del cuerpo sin fuerza
name-sign-face-speech = Cara torcida o habla rara
name-sign-head-knock = Caída con golpe en la cabeza
name-sign-no-weight = No poder apoyar una pierna
name-sign-cannot-get-up = No poder levantarse
name-sign-back-weak-legs = Espalda, piernas flojas u orina
name-sign-emergency = Pidió ayuda
name-sign-self-harm = Palabras de hacerse daño
name-sign-calf = Pantorrilla hinchada y con dolor
name-sign-eye = Destellos o manchas en la vista
name-sign-sudden-back = Dolor de espalda nuevo y brusco
name-sign-dizzy = Mareo o corazón acelerado
name-sign-groin-thigh = Dolor nuevo en ingle o muslo
name-sign-foot-shin-spot = Duele un punto: pie o espinilla
name-sign-leak = Pérdida de orina
name-sign-sore = Solo músculos doloridos
name-sign-none = Ninguna de las señales
name-place-back = Espalda
name-place-hip = Cadera
name-place-groin = Ingle
name-place-thigh = Muslo
name-place-knee = Rodilla
name-place-shin = Espinilla
name-place-foot = Pie
name-place-elsewhere = Otro sitio
name-when-during = Mientras lo hago
name-when-after = Después
name-when-next-morning = A la mañana siguiente
name-when-other = En otros momentos
name-when-today = Hoy
name-when-yesterday = Ayer
name-when-earlier = Antes de ayer o más atrás
name-doing-exercise = Mi ejercicio
name-doing-walking = Caminar
name-doing-stairs = En las escaleras
name-doing-getting-up = Levantarme
name-doing-other = Otra cosa
name-step-sign = señales de alarma
name-step-place = dónde duele
name-step-score = cuánto duele
name-step-when = cuándo
name-step-new = nuevo o conocido
name-step-sharper = más agudo o no
name-step-injured = daño en la caída
name-step-new-pain = dolor nuevo desde la caída
name-step-doing = qué pasó

## name: days of a week

name-cell-counted = cuenta
name-cell-partial = hecho en parte
name-cell-missed = no hecho
name-cell-excused = justificado
name-cell-open = aún abierto
name-cell-ahead = por venir
name-cell-rest = no previsto
name-cell-extra = extra, no previsto
name-why-no-answer = sin respuesta
name-why-declined = dijo que no
name-why-break = en pausa
name-why-hold = en suspensión
name-why-unreachable = no se pudo contactar
name-why-bot-down = fallo del sistema
name-why-not-asked = no se pidió
name-why-travel = viaje
name-why-clinician = corregido por usted
name-mark-no-answer = R
name-mark-declined = D
name-mark-break = P
name-mark-hold = S
name-mark-unreachable = C
name-mark-bot-down = F
name-mark-not-asked = N
name-mark-travel = V
name-mark-clinician = U

## name: readiness

name-ready-broken-bone = Un hueso roto en las últimas 12 semanas
name-ready-spine-fracture = Un hueso roto en la columna alguna vez, o más de 1 hueso roto por caídas leves
name-ready-surgery = Una operación en las últimas 12 semanas
name-ready-two-falls = 2 caídas o más en el último año
name-ready-bone-injections = Inyecciones para los huesos que dejó hace poco
name-ready-height = Ha perdido estatura
name-ready-heart = Un problema de corazón, presión o respiración con el que el médico le pidió cuidado
name-ready-dizzy-spells = Mareos o desmayos en el último año
name-ready-numb-feet = Pies dormidos
name-ready-eye = Una operación de ojos, o la retina desprendida
name-ready-blood-thinners = Toma anticoagulantes (pastillas para que la sangre no cuaje)
name-ready-new-pain = Dolor nuevo en la ingle, el muslo o la espalda
name-ready-joint = Una articulación hinchada o que duele ahora
name-ready-leaking = Al saltar se escapa la orina, o nota un peso abajo
name-ready-pregnant = Hay un embarazo
name-ready-replacement = Una prótesis de cadera, rodilla u otra
name-ready-steroids = Pastillas de cortisona durante meses
name-ready-unsure-bones = No sabe cuál: huesos y caídas
name-ready-unsure-heart = No sabe cuál: corazón, cabeza y equilibrio
name-ready-unsure-else = No sabe cuál: todo lo demás

## name: flags, people, plans

name-reason-hold = en suspensión
name-reason-no-clearance = sin autorización
name-reason-pain = dolor o señal de alarma
name-reason-fall = una caída
name-reason-question-open = algo le duele, sin respuesta
name-reason-not-read = un mensaje que no pude leer
name-reason-too-much = más que el plan
name-reason-words = un mensaje para usted
name-reason-unreachable = sin contacto en el chat
name-reason-week-out-of-reach = semana fuera de alcance
name-reason-missed-days = días seguidos sin hacer
name-reason-silent = en silencio
name-reason-break = pidió una pausa
name-reason-lapsed = autorización caducada
name-reason-review-due = toca revisión
name-reason-step-test = prueba de pasos
name-reason-step-due = toca prueba de pasos
name-reason-left = se fue
name-reason-plan-ended = plan acabado
name-kind-pain = Dolor o señal de alarma
name-kind-fall = Una caída
name-kind-question-open = Algo le duele, sin respuesta
name-kind-not-read = Un mensaje que no pude leer. Puede ser de dolor o de una caída
name-kind-too-much = Más que el plan
name-kind-words = Un mensaje para usted
name-kind-plan-ended = El plan ha acabado
name-kind-review-due = Toca revisión
name-kind-lapsed = La autorización ha caducado
name-kind-break = Una pausa
name-kind-step-test = Prueba de pasos
name-kind-step-due = Toca prueba de pasos
name-kind-left = Se fue
name-kind-silent = En silencio
name-kind-missed-days = Días seguidos sin hacer
name-kind-week-out-of-reach = Semana fuera de alcance
name-kind-unreachable = Sin contacto en el chat
name-outcome-called = Llamada hecha
name-outcome-referred = Con derivación
name-outcome-advised = Con consejo
name-outcome-no-action = Sin acción
name-outcome-note = Solo nota
name-outcome-restored = Acabó solo, al día
name-outcome-heard = Acabó solo, escribió
name-outcome-back = Acabó solo, ha vuelto
name-outcome-over = Acabó solo, ya pasó
name-outcome-cleared = Con nueva autorización
name-outcome-tested = Acabó solo, prueba hecha
name-outcome-taken-back = Acabó solo, se quitó
name-outcome-planned = Un plan nuevo
name-ceiling-none = Sin impacto
name-ceiling-low = Impacto bajo
name-ceiling-moderate = Impacto moderado
name-ceiling-high = Impacto alto
name-role-client = paciente
name-role-clinician = terapeuta
name-role-admin = administración
name-state-invited = con invitación
name-state-joining = entrando
name-state-ready = en activo
name-state-left = se fue
name-state-discharged = atención terminada
name-field-movement = Movimiento
name-field-daily-total = Total diario
name-field-bout-reps = Por tanda
name-field-bout-max = Tope tanda
name-field-weekdays = Qué días
name-field-days-min = Mín. días
name-field-days-max = Máx. días
name-field-rest-days = Descanso
name-field-window = Horario
name-field-quiet = Silencio
name-field-gap-minutes = Separación
name-field-start = Inicio
name-field-review = Revisión
name-field-end = Fin
name-field-note = Nota
name-field-companions = Complemento

## name: breaks

name-away-travel = Viaje
name-away-illness = Enfermedad
name-away-other = Otra cosa

## name: companions

# common practice, no source
name-companion-back-raise = Subir la espalda, boca abajo
name-companion-hover-hold = Plancha a gatas

## name: lapses

name-because-readiness = Un nuevo “sí, o no lo sé” sobre la salud
name-because-injury = Una lesión
name-because-break = Una pausa larga
name-because-review = La fecha de revisión pasó hace 7 días

## name: settings

name-setting-name = Nombre de la clínica
    .does = Los pacientes lo ven en el primer mensaje.
    .unit = { "" }
name-setting-phone = Teléfono de la clínica
    .does = Los pacientes llaman ahí. Sin él no se piden tandas a nadie.
    .unit = { "" }
name-setting-emergency-number = Número de emergencias
    .does = Se dice a los pacientes que llamen ahí. Sin él no se piden tandas a nadie.
    .unit = { "" }
name-setting-crisis-line = Línea de crisis
    .does = Se da ante palabras de hacerse daño. Sin ella se da el número de emergencias.
    .unit = { "" }
name-setting-answer-hours = Horas de respuesta
    .does = Las horas en que la clínica contesta, como las ven los pacientes.
    .unit = { "" }
name-setting-zone = Zona horaria
    .does = La zona con la que empieza un paciente nuevo.
    .unit = { "" }
name-setting-window = Horario
    .does = El horario con el que empieza un paciente o un plan nuevo.
    .unit = { "" }
name-setting-late-minutes = Descartar si tarda
    .does = Una petición que llegaría más tarde que esto no se envía.
    .unit = { " " }{ $value ->
            [one] minuto
           *[other] minutos
        }
name-setting-question-minutes = Responder dolor en
    .does = Una pregunta sobre dolor o una caída que sigue abierta más tiempo se vuelve una suspensión.
    .unit = { " " }{ $value ->
            [one] minuto
           *[other] minutos
        }
name-setting-invitation-days = El enlace vale
    .does = Cuánto tiempo vale un enlace.
    .unit = { " " }{ $value ->
            [one] día
           *[other] días
        }
name-setting-tau-hours = Recuperación
    .does = La constante de tiempo de la recuperación entre dos tandas (teórica).
    .unit = { " " }{ $value ->
            [one] hora
           *[other] horas
        }
name-setting-close-hour = El día se cierra a las
    .does = Hasta esta hora del día siguiente, lo anotado cuenta para un día.
    .unit = { " " }h del día siguiente
name-setting-count-percent = El día cuenta desde
    .does = Un día cuenta cuando se hace esta parte de su total.
    .unit = { " " }por ciento
name-setting-pain-carry-on = Seguir, dolor hasta
    .does = Un dolor conocido hasta esta cifra no cambia nada.
    .unit = { " " }de 10
name-setting-pain-hold = Parar, dolor desde
    .does = El dolor desde esta cifra para todo el ejercicio.
    .unit = { " " }de 10
name-setting-morning-rise = Parar, subida matinal
    .does = Para todo el ejercicio cuando el dolor de la mañana siguiente supera así al habitual.
    .unit = { " " }sobre el habitual
name-setting-morning-if-unknown = Parar, habitual sin dato
    .does = Para todo el ejercicio desde esta cifra cuando no se conoce el dolor habitual.
    .unit = { " " }de 10
name-setting-spread-minutes = Reparto de inicios
    .does = Mueve el día de cada paciente hasta tanto, para que no se pida a todos a la vez.
    .unit = { " " }{ $value ->
            [one] minuto
           *[other] minutos
        }
name-setting-clearance-reminder-days = Recordar autorización
    .does = Se recuerda al terapeuta tras estos días sin autorización.
    .unit = { " " }{ $value ->
            [one] día
           *[other] días
        }
name-setting-week-start = La semana empieza el
    .does = El día en que empieza una semana.
    .unit = { "" }
name-setting-missed-limit = Aviso tras días sin hacer
    .does = Tantos días previstos seguidos que no cuentan hacen un aviso.
    .unit = { " " }{ $value ->
            [one] día
           *[other] días
        }
name-setting-silent-days = Aviso tras silencio de
    .does = Hay un aviso cuando no llega nada de un paciente en este tiempo.
    .unit = { " " }{ $value ->
            [one] día
           *[other] días
        }
name-setting-repeat-hours = Repetir aviso urgente tras
    .does = Un aviso urgente que sigue abierto tras este tiempo se repite, y luego va a otros.
    .unit = { " " }{ $value ->
            [one] hora
           *[other] horas
        }
name-setting-work-hours = Horas de trabajo
    .does = Los avisos que no son urgentes llegan en estas horas.
    .unit = { "" }
name-setting-work-days = Días de trabajo
    .does = Los días de la semana con horas de trabajo.
    .unit = { "" }
name-setting-files-in-chat = Archivos en el chat
    .does = Si se envían en el chat archivos con datos: sí o no.
    .unit = { "" }
name-setting-step-cutoff = Corte prueba pasos
    .does = Si el mejor de los dos tiempos pasa de aquí, es “cribado positivo”. Usual: 15. Otros grupos tienen otros.
    .unit = { " " }segundos
name-setting-step-slower-percent = Prueba más lenta
    .does = Una prueba de pasos más lenta que la mejor del paciente por más de esto se avisa.
    .unit = { " " }por ciento
name-setting-step-weeks = Repetir prueba
    .does = La prueba de pasos se repite tanto tiempo después de la última.
    .unit = { " " }{ $value ->
            [one] semana
           *[other] semanas
        }
name-setting-erase-left = Borrar a quien se fue
    .does = Si los datos de quien se fue se borran 7 días después: sí o no. Vea antes cuánto tiempo manda guardarlos la ley.
    .unit = { "" }
name-setting-backup-days = Caducan las copias
    .does = Durante cuánto tiempo se puede recuperar una copia de seguridad. Bórrela entonces: puede tener lo que se borró después.
    .unit =
        { $value ->
            [one] día
           *[other] días
        }
