### What we say in English. (What we understand is in a catalogue of its own.)
###
### One text a message id. A group comment (##) says who reads what follows: client, clinician, admin,
### everyone, button, command; "part" and "name" are pieces that other texts are made of.
###
### Rules for what a client reads: short, plain, active; digits; one action a message; no guilt, no
### exclamation marks, no filler praise; never a diagnosis, never that something is safe; US school
### grade 6 or below (measured by a test).
###
### An argument that is not there, empty or unknown reads "none"; yes and no read "yes" and "no".
### Times, days, lists and names arrive as words already: see bot/words/formats.py.

-language = English

## part: pieces

part-side =
    { $per_side ->
        [yes] { " " }each side
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
       *[other] { $done } of { $total }{ part-side }
    }
part-next =
    { $next ->
        [none] { "" }
       *[other] { " " }Next at { $next }.
    }
part-call =
    { $phone ->
        [none] Call the practice.
       *[other] Call the practice: { $phone }.
    }
part-call-today =
    { $phone ->
        [none] Call the practice today.
       *[other] Call the practice today: { $phone }.
    }
part-questions =
    { $phone ->
        [none] Questions? Call the practice.
       *[other] Questions? Call the practice: { $phone }.
    }
part-answer-hours =
    { $answer_hours ->
        [none] { "" }
       *[other] { " " }They answer: { $answer_hours }.
    }
part-dose =
    { $total ->
        [one] { $total } { $movement_one }{ part-side } a day
       *[other] { $total } { $movement }{ part-side } a day
    }, in bouts of { $bout_reps }
part-urgent =
    { $urgent ->
        [yes] Urgent.{ " " }
       *[no] { "" }
    }
part-values =
    { $values ->
        [none] { "" }
       *[other] { " " }What would work: { $values }.
    }
part-no-emergency-number = your local emergency number
part-no-clinician = your clinician
part-no-practice = your practice
part-date = { $weekday } { $number } { $month }
part-date-year = { $date } { $year }
part-moment = { $date }, { $time }
part-and = { $before }, { $last }
part-time =
    { $minute ->
        [0] { part-hour }
       *[other] { $hour12 }:{ $minutes } { part-half }
    }
part-hour =
    { $hour ->
        [0] 12 midnight
        [12] 12 noon
       *[other] { $hour12 } { part-half }
    }
part-half =
    { $hour ->
        [0] am
        [1] am
        [2] am
        [3] am
        [4] am
        [5] am
        [6] am
        [7] am
        [8] am
        [9] am
        [10] am
        [11] am
       *[other] pm
    }
part-span = { $start } to { $end }
part-row-digest =
    { $reasons ->
        [none] { $name }
       *[other] { $name } needs you: { $reasons }
    }
    { $days } of { $needed } days, { $reps_capped } of { $prescribed } reps{ part-side }{ $reps_over ->
        [0] { "" }
       *[other] { " " }(+{ $reps_over } over)
    }, { $bouts } of { $bouts_planned } bouts, theoretical spread { $spread ->
        [none] -
       *[other] { $spread } %
    }, pain { $pain ->
        [none] -
       *[other] { $pain }
    }{ $excused ->
        [0] { "" }
       *[other] , { $excused } excused
    }{ $open ->
        [0] { "" }
       *[other] , { $open } open
    }{ $companions ->
        [none] { "" }
       *[other] . { $companions }
    }{ $step ->
        [none] { "" }
       *[other] . Step test { $step }
    }
part-row-client =
    { $name }{ $whose ->
        [none] { "" }
       *[other] { " " }(client of { $whose })
    }{ $reasons ->
        [none] { "" }
       *[other] : { $reasons }
    }
part-row-cover =
    { $name }, { $until ->
        [none] no end
       *[other] to the end of { $until }
    }
part-score = { $day }: { $score }
part-yes = yes
part-no = no
part-row-flag =
    #{ $flag } { $name }: { $reason }, since { $since }{ $dates ->
        [none] { "" }
       *[other] { " " }({ $dates })
    }
part-reason =
    { $reason }{ $since ->
        [none] { "" }
       *[other] { " " }since { $since }
    }{ $pain ->
        [none] { "" }
       *[other] , pain { $pain }
    }
part-companion = { $companion } { $done } of { $days }
part-amount =
    { $measure ->
        [hold] { $amount } s
       *[other] { $amount } times
    }{ $rounds ->
        [one] { "" }
       *[other] , { $rounds } rounds
    }
part-beside = { $companion }: { part-amount } ({ $weekdays })
part-row-bout = { $at }: { $reps }
part-row-dose =
    { $bouts ->
        [one] { $bouts } bout of { $most }: index { $index }
       *[other] { $bouts } bouts of up to { $most }, { $gap_minutes } min apart: index { $index }, { $against_one_go } times one go
    }
part-row-setting = { $setting }: { $value }{ $unit }
part-item = - { $item }
part-chosen =
    { $chosen ->
        [yes] Yes:{ " " }
       *[no] { "" }
    }

part-trial =
    { $best ->
        [none] no time
       *[other] { $best } s
    }
part-step =
    { $best ->
        [none] no time
       *[other] { $best } s
    }{ $positive ->
        [yes] , screen positive
       *[no] { "" }
    }{ $slower ->
        [yes] , slower than the best
       *[no] { "" }
    } ({ $day_short })
part-row-step = { $day }: { $trials }{ $home ->
        [yes] { " " }(at home)
       *[no] { "" }
    }

## part: lines of a flag

part-flag-urgent =
    { $urgent ->
        [yes] All exercise is stopped until you release it.
       *[no] { "" }
    }
part-flag-movement = Stopped until you release it: { $movement }
part-flag-sign = Sign: { $sign }
part-flag-score = Pain: { $score } of 10
part-flag-place = Where: { $place }
part-flag-when = When: { $when }
part-flag-new =
    { $new ->
        [yes] A new pain
       *[no] A known pain
    }
part-flag-sharper =
    { $sharper ->
        [yes] Sharper than usual
       *[no] Not sharper than usual
    }
part-flag-injured =
    { $injured ->
        [yes] Injured
       *[no] No injury said
    }
part-flag-new-pain =
    { $new_pain ->
        [yes] New pain since the fall
       *[no] No new pain since the fall
    }
part-flag-doing = Doing: { $doing }
part-flag-unanswered = No answer to: { $unanswered }
part-flag-reps = In one go: { $reps }{ part-side }
part-flag-done = Done on { $day }: { $done } of { $total }{ part-side }
part-flag-away = Why: { $away }
part-flag-because = Why: { $because }
part-flag-readiness =
    Answered “yes or not sure” now:
    { $readiness }
part-flag-begins = From: { $begins }
part-flag-until = Until: { $until }
part-flag-screened =
    { $screened ->
        [no-time] Could not complete it: screen positive, no time
        [positive] Screen positive: over the cut-off
        [positive-slower] Screen positive: over the cut-off, and more than the set share slower than the best
       *[slower] More than the set share slower than the best
    }
part-flag-trials = Tries: { $trials }
part-flag-best-before = Best before: { $best_before } s
part-flag-stepped = Last step test: { $stepped }
part-flag-words = Own words: “{ $words }”
part-flag-phone = Phone: { $phone }

## client: bouts

day-opening =
    { $bouts ->
        [one] Today: { part-reps } in 1 bout, at about { $first }.
       *[other] Today: { part-reps } in { $bouts } bouts, from about { $first } to { $last }.
    }
prompt = Now: { part-reps }. Done today: { part-done }.
safety = First clear the floor and put on shoes. Have something firm to hold. Stop if it hurts.
noted = Noted: { part-reps }.
nudge = Still to do: { part-reps }. You can also say: later, or skip.
no-answer = I got no answer about { part-reps }. That is fine. You can still tell me what you did.{ part-next }
away = I was cut off for a while and could not ask on time. You need not catch up.{ part-next }

logged =
    { $day ->
        [none] Noted: { part-reps }. Done today: { part-done }.{ part-next }
       *[other] Noted for { $day }: { part-reps }. Done that day: { part-done }.
    }
skipped =
    { $day ->
        [none] Skipped: { part-reps }. That is fine. Done today: { part-done }.{ part-next }
       *[other] Skipped for { $day }: { part-reps }. That is fine.
    }
undone =
    { $day ->
        [none] Taken back: { part-reps }. Done today: { part-done }. You can send the right number now.{ part-next }
       *[other] Taken back for { $day }: { part-reps }. Done that day: { part-done }.
    }
put-off =
    { $next ->
        [none] OK. I will not ask for this one again today.
       *[other] OK. I will ask again at { $next }: { part-reps }.
    }
more-than-planned = The plan for the day was { $total }{ part-side }. Please do no more than the plan.
rest-day-noted = This was not a planned day. I noted it. Please keep your rest days.
day-done = That is all for today.
no-more-today = I will not ask again today. You need not do extra.
stopped-for-now = Your bouts are stopped for now. Please do no more until you hear from me.
already-logged = You told me this one before. Done: { part-done }.{ part-next }
edit-kept = I kept the number I had. To change it, send: undo. Then send the right number. Done: { part-done }.{ part-next }
nothing-open = There is no bout to do right now. Done today: { part-done }.{ part-next }
day-over = { $day } is closed, so I cannot change it. You need not do extra.
undo-nothing = There is nothing I can take back.
later-no-more = I cannot put this bout off again. You can do it now, do fewer, or skip it.
later-too-late =
    { $next ->
        [none] There is no later time today. You can do it now or skip it.
       *[other] That is too late for today. The last time that works is { $next }. You can do it now, send an earlier time, or skip it.
    }

ask-reps =
    { $asked ->
        [none] How many{ part-side } did you do? Send the number.
       *[other] How many{ part-side } did you do? Tap the number or send it.
    }
ask-reps-again = How many did you do? Or send: skip
ask-reps-range = I can log 1 to { $largest }. How many did you do?
ask-reps-sure = Did you do { $reps }{ part-side }? I have not logged it yet.
ask-reps-unclear = I was not sure which number you mean, so I logged nothing. How many did you do?

today = Done today: { part-done }.
today-open = To do now: { part-reps }.
today-next = Next at { $next }: { part-reps }.
# the week: which days, a day made up, how it was

week-days = For this week I suggest: { $dates }. Are these days OK?
choose-days = Which days suit you? You have { $dates } now. Tap a day to add it or take it out.
days-count =
    { $exact ->
        [yes]
            { $least ->
                [one] Pick 1 day.
               *[other] Pick { $least } days.
            }
       *[no] Pick { $least } to { $most } days.
    }
days-rest =
    { $rest_days ->
        [one] Leave 1 day of rest between two days.
       *[other] Leave { $rest_days } days of rest between two days.
    }
week-days-kept = Your days this week: { $dates }.
make-up =
    { $done ->
        [0] I have nothing noted for { $day }. That is fine. You need not do extra.
        [one] I have 1 rep{ part-side } noted for { $day }. That is fine. You need not do extra.
       *[other] I have { $done } reps{ part-side } noted for { $day }. That is fine. You need not do extra.
    } { $today ->
        [yes] Is today OK instead?
       *[no] Is { $instead } OK instead?
    }
make-up-kept =
    { $today ->
        [yes] Good. I will ask you today.
       *[no] Good. I will ask you on { $day }.
    }
make-up-declined = OK. We leave it at that.
make-up-too-late = { $day } does not fit any more, as rest comes first. The rest of the week stays as it is.
made-up-not-needed = So you need not do { $day }. I took it out.
week-no-room =
    There is no room for { $needed ->
        [one] 1 day
       *[other] { $needed } days
    } this week, as rest comes first. Please do not squeeze more in.{ $dates ->
        [none] { "" }
       *[other] { " " }Planned as before: { $dates }.
    }
ask-week = One tap about your week: any pain, a fall, or leaking urine?
week-thanks = OK, I noted that.
week-no-plan = You have no plan yet. { $clinician } will set it.

today-rest =
    { $stopped ->
        [yes] I ask for no bouts for now. Please do none until you hear from me.
       *[no]
            { $done ->
                [0] No bouts are planned for today.
               *[other] No bouts are planned for today. Done: { $done }{ part-side }.
            }
    }

## client: pain and falls

ask-pain-sign =
    { $first ->
        [yes] I have stopped your bouts for now. Do you have one of these? In an emergency, call { $emergency_number } first.
       *[no] Do you have one of these? In an emergency, call { $emergency_number } first.
    }
ask-pain-place = Where does it hurt most?
ask-pain-score = How much does it hurt, from 0 to 10? 0 is no pain. 10 is the worst pain.
ask-pain-when = When does it hurt?
ask-pain-new = Is this a new pain, or do you know it?
ask-pain-sharper = Is it sharper than what you are used to?
pain-noted = I have noted it. If you wish, go on as planned.{ part-next } Stop if it hurts more, and tell me. { part-questions }
pain-caution = I have noted it. If you wish, go on today, but take care.{ part-next } Stop if it hurts more, and tell me. I will ask again in the morning. { part-questions }
noted-on-hold = I have noted it. Your exercise stays stopped. Only { $clinician } can start it again. { part-questions } In an emergency, call { $emergency_number }.
mistake-noted = OK, I noted no pain.{ part-next }
mistake-too-late = You told me that something hurts, so I need to ask this.
no-pain-noted = OK, I noted no pain and logged nothing. If something hurts, tell me.
ask-morning = How is the pain this morning, from 0 to 10? 0 is no pain. 10 is the worst pain. I will ask for no bouts until you tell me.

ask-fall-sign =
    { $first ->
        [yes] I am sorry that you fell. I have stopped your bouts for now. Is one of these true? In an emergency, call { $emergency_number } first.
       *[no] Is one of these true? In an emergency, call { $emergency_number } first.
    }
ask-fall-injured = Did you hurt yourself?
ask-fall-new-pain = Do you have new pain since the fall?
ask-fall-when = When did you fall?
ask-fall-doing = What were you doing when you fell?
fall-noted = I have noted your fall and am telling { $clinician }. If you wish, go on as planned.{ part-next } If something hurts later, stop and tell me. { part-questions }

## client: stopped, and started again

you-said-score = You said { $score } of 10.
no-answer-so-stopped = I asked how you are and got no answer.
stop-contact = I have stopped all exercise and am telling { $clinician }. Only { $clinician } can start it again. { part-call-today }{ part-answer-hours } If it gets much worse, call { $emergency_number }. Nobody reads this chat live.
stop-today = I have stopped all exercise and am telling { $clinician }. Only { $clinician } can start it again. { part-call-today }{ part-answer-hours } If it gets much worse, call { $emergency_number }. Nobody reads this chat live.
stop-urgent-care = Please get urgent care today. Do not wait for us. If it gets worse, call { $emergency_number } now. Nobody reads this chat live. I have stopped all exercise and am telling { $clinician }. { part-call }
stop-emergency = Call { $emergency_number } now. Do not wait for us. Nobody reads this chat live. I have stopped all exercise and am telling { $clinician }.
stop-crisis =
    { $crisis_line ->
        [none] Please call { $emergency_number } now and talk with someone.
       *[other] Please call { $crisis_line } now and talk with someone. In danger? Call { $emergency_number }.
    } Nobody reads this chat live. I have stopped all exercise and am telling { $clinician }.
stop-leak = Thank you for saying so. I have stopped this exercise and am telling { $clinician }. Only { $clinician } can start it again. { part-questions }
held-by-clinician = Word from { $clinician }: all exercise is stopped for now. Only { $clinician } can start it again. { part-questions } In an emergency, call { $emergency_number }.
release-told = You can start again, says { $clinician }: { part-dose }, { $day ->
        [none] when your break is over
       *[other] from { $day }
    }. If you feel new pain, stop and tell me.

## client: joining

notice =
    This chat is from { $practice }. It asks you to do the exercise that { $clinician } gives you, a little at a time. Each short turn is called a bout. It keeps your answers.

    What we keep: your name, your times, what you did, and what you say about your health, pain and falls. It can be seen by { $clinician }, or by a co-worker who stands in. The office sees just your name and times.

    The chat app carries the messages. They are not end-to-end encrypted, and we cannot clear them from its servers.

    Nobody watches this chat live. In an emergency, call { $emergency_number }. { part-questions }

    You can leave at any time. Send: /leave. To see what we keep: /data. The practice may have to keep its record.

    Do you agree?
consent-declined = OK. I will keep nothing and ask nothing. If you change your mind, tap: I agree. { part-questions } In an emergency, call { $emergency_number }.
hurts-before-consent = You say that something hurts, or that you fell. I can keep nothing and ask nothing before you agree. { part-call-today } In an emergency, call { $emergency_number }. Nobody reads this chat live.
consent-not-renewed = OK. I will ask for no bouts. What the practice has stays there. If you change your mind, tap: I agree. To leave, send: /leave. { part-questions } In an emergency, call { $emergency_number }.
consent-kept = Thank you. I noted that you agree. All goes on as before.
ask-screen-bones =
    1 of 3. Is any of these true for you?
    - { name-ready-broken-bone }
    - { name-ready-spine-fracture }
    - { name-ready-surgery }
    - { name-ready-two-falls }
    - { name-ready-bone-injections }
    - { name-ready-height }
ask-screen-heart =
    2 of 3. Is any of these true for you?
    - { name-ready-heart }
    - { name-ready-dizzy-spells }
    - { name-ready-numb-feet }
    - { name-ready-eye }
    - { name-ready-blood-thinners }
ask-screen-else =
    3 of 3. Is any of these true for you?
    - { name-ready-new-pain }
    - { name-ready-joint }
    - { name-ready-leaking }
    - { name-ready-pregnant }
    - { name-ready-replacement }
    - { name-ready-steroids }
ask-which = Which ones? Tap each one that is true or that you are not sure of. Tap it again to take it back. Then tap: That is all.
ask-usual-pain = How much pain do you have on a usual day, from 0 to 10? 0 is no pain. 10 is the worst pain.
ask-times =
    These are the times when I may ask. Do they fit?
    Hours: { $window }
    Quiet: { $quiet }
    Time zone: { $zone }{ $days ->
        [none] { "" }
       *[other]
            { "" }
            Days: { $days }
    }
ask-times-zone = Which time zone are you in? Send a big city near you, like: Berlin. Or share your place: tap the paper clip, then: Location. I will not keep the place.
ask-zone-sure = Where you are, it is { $at } now, and your time zone is { $zone }. Is that right? I did not keep your place.
ask-times-window = From when to when may I ask? Send it like: 8 am to 8 pm
ask-times-quiet = When should I be quiet? Send it like: 12:00-13:00. Or send: none
ask-times-days =
    Which days of the week suit you best? { $days ->
        [none] You have none now.
       *[other] You have { $days } now.
    } Tap a day to add it or take it out. Or send them like: Mon, Thu
times-do-not-fit = Your plan does not fit in that, so I kept your old times. Please choose longer hours, or ask your clinician.
ready-waiting = You are all set. Next, your answers go to { $clinician }. I will ask for no bouts until { $clinician } says yes. There is nothing to do now. { part-questions }
ready =
    { $today ->
        [yes] You are all set. Your first bouts are today.
       *[no] You are all set. I will write on your next bout day.
    }
readiness-kept = Thank you. Your answers are noted.
moved-over = Hello { $name }. From now on we talk here. Your old chat gets no more messages.
plan-told =
    New plan from { $clinician }: { part-dose }.
    Days: { $days ->
        [none] still open
       *[other] { $days }
    }
    Hours: { $window }
    First day: { $day }{ $beside ->
        [none] { "" }
       *[other]
            { "" }
            Also: { $beside }
    }{ $note ->
        [none] { "" }
       *[other]
            { "" }
            Note: { $note }
    }

## client: breaks

ask-break-reason = I can start a break for you. Why do you want one?
ask-break-length = How long will it be, from today on? Tap one, or send it like: 5 days, or: till Sunday
ask-break-first = What is the first day of your break? Send it like: Friday, or: 12 March
ask-break-length-from = How long will it be, from { $day } on? Tap one, or send it like: 5 days, or: till Sunday
break-too-far = I cannot count that far. Please send a nearer day.
break-not-now = OK. No break, and all goes on as planned.
break-started =
    { $until ->
        [none] Your break has started. I will ask for nothing until you are back.
       *[other] Your break has started. I will ask for nothing until { $until }. Your break ends after that day.
    }{ $done ->
        [0] { "" }
       *[other] { " " }What you did today stays noted.
    } I am telling { $clinician }.{ $too_long ->
        [yes] { " " }After a break this long, { $clinician } has to say yes before you go on.
       *[no] { "" }
    }
    { $until ->
        [none] When you are back, tap the button or send: I am back
       *[other] Back sooner? Tap the button, or send: I am back
    }
break-planned =
    { $until ->
        [none] Your break is noted. It starts on { $day }. From then on I will ask for nothing until you are back.
       *[other] Your break is noted. It starts on { $day }. Its last day is { $until }. I will ask for nothing on those days.
    } Until it starts, all goes on as planned. I am telling { $clinician }.{ $too_long ->
        [yes] { " " }After a break this long, { $clinician } has to say yes before you go on.
       *[no] { "" }
    }
break-ahead =
    { $until ->
        [none] A break is planned for you from { $day } on. Until then all goes on as planned.
       *[other] A break is planned for you. It starts on { $day }. Its last day is { $until }. Until it starts, all goes on as planned.
    }
break-cancelled = OK. The break from { $day } on is off, and all goes on as planned.
break-on =
    { $until ->
        [none] You are on a break, so I ask for nothing.
       *[other] You are on a break until { $until }, so I ask for nothing.
    }{ $done ->
        [0] { "" }
       *[other] { " " }Done today: { $done }.
    }
    { $until ->
        [none] When you are back, tap the button or send: I am back
       *[other] Back sooner? Tap the button, or send: I am back
    }
on-break = You are on a break, so I ask for nothing. When you are back, send: I am back
break-over =
    { $today ->
        [yes] Good to have you back. I will ask you for bouts today.
        [none] Good to have you back.
       *[no] Good to have you back. I will write on your next bout day.
    }
no-break = You are not on a break, so I changed nothing.
break-by-clinician =
    { $until ->
        [none] Word from { $clinician }: you have a break from today on. I will ask for nothing until you are back. To end it, tap the button or send: I am back
       *[other] Word from { $clinician }: you have a break from today to { $until }. I will ask for nothing. To end it sooner, tap the button or send: I am back
    }
break-ended-by-clinician =
    { $today ->
        [yes] Word from { $clinician }: your break is over. I will ask you for bouts today.
        [none] Word from { $clinician }: your break is over.
       *[no] Word from { $clinician }: your break is over. I will write on your next bout day.
    }

## client: exercises beside the bouts

ask-companion =
    Today: { $companion }. { $measure ->
        [hold] Hold for { $amount ->
            [one] 1 second
           *[other] { $amount } seconds
        }
       *[other] { $amount ->
            [one] 1 time
           *[other] { $amount } times
        }
    }{ $rounds ->
        [one] { "" }
       *[other] , { $rounds } rounds
    }. Stop if it hurts.
ask-companion-rounds = How many full rounds of this did you do? { $companion }. Send the number, or: none
companion-noted =
    { $done ->
        [0] OK. I noted none for { $day ->
            [none] today
           *[other] { $day }
        }: { $companion }.
       *[other] Noted{ $day ->
            [none] { "" }
           *[other] { " " }for { $day }
        }: { $companion }{ $rounds ->
            [one] { "" }
           *[other] , { $done } of { $rounds } rounds
        }.
    }
companion-not-planned = This is not in your plan, so I logged nothing: { $companion }.

## client: clearance that has ended, and a plan that is over

lapsed =
    { $because ->
        [break] You had a long break, so { $clinician } has to say yes again before you go on. I will ask for no bouts until then. { $clinician } knows.
        [review] It is time for { $clinician } to look at your plan again. I will ask for no bouts until then. { $clinician } knows.
       *[other] Thank you for saying so. { $clinician } has to look at this first. I will ask for no bouts until { $clinician } says yes. { $clinician } knows.
    }
cleared-told = Word from { $clinician }: you can go on with your plan. I will write on your next bout day. If you feel new pain, stop and tell me.
plan-ended = Your plan ended on { $day }. I will ask for no bouts until { $clinician } sets a new one. { $clinician } knows. There is nothing to do now.

## client: what is no text

file-hurts = Does something hurt, or did you fall? Tap here.
only-command-read = I read the command only. I noted nothing of the words after it. Please send them on their own.
only-words-read = I read your words only. I cannot see or hear what came with them.
forwarded =
    { $asks ->
        [yes] These words may not be yours, so I counted no reps. But I need to ask. Did you fall? Send: fell
       *[no] These words may not be yours, so I noted nothing. Please tell me in your own words.
    }

## client: how it is done

how-to =
    How to do it: { $exercise }
    { $steps }
    Support: { $hold }
    Take care: { $avoid }
    Stop if it hurts, and tell me.
how-to-asked =
    { how-to }{ $others ->
        [none] { "" }
       *[other]
            { "" }
            To see another exercise of yours, tap it here:
    }

## client: the step test

step-due = It is time for your step test again. Do it only with somebody beside you. { $clinician } will see the result. Not a good time? Leave it for another day.
step-allowed = { $clinician } lets you do the step test at home. Do it only with somebody beside you. To begin, tap the button or send: /steptest
step-how =
    Do this test only with somebody right beside you. Stop if you feel dizzy or if it hurts.
    Put 2 strips of tape flat on the floor, in a cross. You now have 4 squares. You can trip on sticks, so use flat tape. Wear shoes. Have support in reach.
    Stand in square 1, in front of square 2. Square 3 is beside square 2. Square 4 is beside square 1.
step-order =
    Step in this order: 2, 3, 4, 1. Then back: 4, 3, 2, 1. Face the same way all the time. Put both feet in each square.
    Start the clock when your first foot is in square 2. Stop it when your last foot is back in square 1. Try it once, then do it 2 times. Go only as fast as you feel steady.
ask-step-ready = Is somebody with you now?
ask-step-times = Do it 2 times. Send both times in seconds, like: 14.8 and 15.2. Lost balance, touched the tape, or took a wrong order? Then that try has no time. Send: no time. If you fell, send: fell
ask-step-second = I have the first: { $trials }. What is the second? Send the seconds, or: no time
step-noted =
    Noted: { $trials }. The better time counts. { $clinician } will see it.{ $void ->
        [yes] { " " }Did you fall or get hurt? Then send: fell. Or: hurts
       *[no] { "" }
    }
step-taken-back = I took it back. To log the test again, send: /steptest
step-left = OK. To do it another time, send: /steptest
step-not-here = You do the step test with { $clinician }, not on your own at home.
step-not-now = No step test now, please.
step-unclear = Please send the times in seconds, like: 14.8 and 15.2. Or send: no time
step-range = A time is from { $low } to { $high } seconds. Please send it again, like: 14.8

## client: words and help

not-understood = I did not get that, so I logged nothing. Send a number, or one of these words: later, skip, undo, hurts, fell, help. Shall I pass your words to { $clinician }? If you are hurt or ill now, call { $emergency_number }.
passed-on = I have passed your words to { $clinician }. Nobody reads this chat live.
not-passed-on = OK. I passed nothing on.
from-clinician = { $name } writes: “{ $words }”{ part-answer-hours } Nobody reads this chat live.
ask-reply = Your next words here go to { $clinician }. Nobody reads this chat live.{ part-answer-hours } In an emergency, call { $emergency_number }.
reply-sent = I passed your words to { $clinician }. I logged no reps from them. Nobody reads this chat live.
help-client =
    Did a bout? Send the number, like: 10
    Not now? Send: later. Or: at 4
    Not this one? Send: skip
    Wrong number? Send: undo
    Pain or a fall? Send: hurts. Or: fell
    Your day: /today. Your times: /times. A break: /break
    Your data: /data. To leave: /leave
    How to do it: /how

    { part-questions }{ part-answer-hours } In an emergency, call { $emergency_number }. Nobody reads this chat live.
care-ended = Your care here has ended, so I logged nothing. { part-questions } In an emergency, call { $emergency_number }.

## client: own data, and to leave

data =
    This is kept about you:
    Your name: { $name }. Your phone: { $phone }
    Bouts you told me of: { $bouts }
    What you said of pain, falls and your weeks: { $reports }
    Step tests: { $tests }
    Also what you wrote here, your plan, your times and your health answers. { $clinician } and the practice see this. To leave, send: /leave
data-json = All that is kept about you. This file is for a program.
data-csv = The same as a table. Keep these files to yourself.
data-fhir = The same in a form that the program of a clinic can read.
data-by-practice = The practice will give you all of it as a file. I have told them that you asked. { part-questions }
ask-leave =
    Do you want to leave for good? All messages will stop, and I will tell { $clinician }.
    { $erased ->
        [yes] What is kept here about you is erased { $days } days later.
       *[no] The practice keeps what it has, for as long as the law asks.
    }
    I cannot clear this chat. You can clear it in the app. The firm that runs the app may keep a copy.
    Just a rest? Send: /break
ask-leave-sure = Are you sure? After this I will send you nothing more. If you tell me here of pain or a fall, it will reach nobody.
leave-not = OK. You stay. Nothing has changed.
left =
    You have left. I will send you nothing more. I am telling { $clinician }.
    { $erased ->
        [yes] What is kept here about you is erased in { $days } days.
       *[no] The practice keeps what it has, for as long as the law asks.
    }
    You can clear this chat in the app.
    { part-questions } In an emergency, call { $emergency_number }.
come-back = You have left here. To come back, ask your practice for a new link. { part-questions }

## client: the week as a picture

week-picture =
    Your week, { $first } to { $last }.
    Days done: { $days } of { $needed }.
own-title = { $first_short } to { $last_short }
own-movement = Your { $movement }{ part-side }
own-days = Days done: { $days } of { $needed }
own-done = { $done } of { $total }
own-extra = { $done } done
own-ahead = { $total } planned
own-rest = rest day
own-off = day off
own-companion = { $companion }: { $done } of { $days } days

## everyone: strangers, roles, answers that do not fit

stranger = This chat is only for people whom their practice has invited. Ask them for a link. Nobody reads what you write here. In an emergency, call your local emergency number.
invitation-refused = This link does not work. Please ask your practice for a new one. In an emergency, call your local emergency number.
only-private = I only talk in private chats. Please write to me there.
not-handled =
    Something went wrong on our side, so I noted nothing from your last message or tap. The practice is told. Are you hurt or ill? Do no more bouts and call the practice now{ $phone ->
        [none] { "" }
       *[other] : { $phone }
    }. In an emergency, call { $emergency_number }. Nobody reads this chat live.
not-handled-paused =
    Something went wrong on our side, and I could not read your last message or tap. The practice is told. Are you hurt or ill? Call the practice now{ $phone ->
        [none] { "" }
       *[other] : { $phone }
    }. In an emergency, call { $emergency_number }. Nobody reads this chat live.
not-handled-now = Something went wrong on our side, so your last message or tap changed nothing. Please try again later. In an emergency, call your local emergency number.
cannot-see-files =
    { $file ->
        [voice] I cannot hear this, so I noted nothing. Please type it.
        [audio] I cannot hear this, so I noted nothing. Please type it.
        [video_note] I cannot see or hear this, so I noted nothing. Please type it.
        [video] I cannot see or hear this, so I noted nothing. Please type it.
        [contact] I keep no phone numbers from this chat, so I noted nothing. Please call the practice about it.
        [location] I did not keep your place. To change your time zone, send: /times
        [poll] I cannot answer this, so I noted nothing. Please type what you want to say.
        [dice] I can only read text, so I noted nothing. Please type the number you did.
       *[other] I can only read text, so I noted nothing. Please type it.
    } In an emergency, call { $emergency_number }.
question-over = This question is closed. I changed nothing.
not-for-you = This button is for someone else. I changed nothing.
ask-role = You act as: { $role }. As whom do you want to act?
acting-as = You now act as: { $role }.
role-not-yours = You do not have that role. I changed nothing.
ask-language = I write to you in: { $language }. In which language shall I write?
language-kept = From now on I write to you in: { $language }.
answer-number = Please send a number from { $low } to { $high }.
answer-score = Please send a number from 0 to 10.
answer-yes-no = Please tap a button, or send: yes or no.
answer-span = Please send two times, like: 8:00-20:00
answer-spans = Please send times like: 12:00-13:00. Or send: none
answer-spans-overlap = Those times overlap. Please send them again, each one after the other.
answer-weekdays = Please send days, like: Mon, Thu. Or send: flexible
answer-own-days = Please send days of the week, like: Mon, Thu
answer-day = Please send a date, like: 12 March
answer-zone =
    { $suggestions ->
        [none] I do not know that place. Please send a big city near you, like: Berlin
       *[other] I am not sure of that place. Do you mean: { $suggestions }?
    }
answer-choice = Please tap a button, or send the words on it.

## clinician: flags

records-restored = The records were put back from a copy made { $since }. What was written here from then until now is lost, also about pain or a fall. Please ask your clients, and look at what you did in that time yourself: holds, releases, plans.
answers-lost = I was cut off from { $since } until now. The chat service keeps what clients write for a day only. Answers may be lost, also about pain or a fall. Please ask your clients.

flag =
    #{ $flag } { part-urgent }{ $kind }: { $name }
    Since { $since } ({ $zone })
flag-repeat = Still open: flag #{ $flag }, sent before.
flag-cover = You cover for { $clinician }. This is still open.
flag-summary =
    { $count ->
        [one] 1 flag that is not urgent.
       *[other] { $count } flags that are not urgent, about { $clients_count ->
            [one] 1 client
           *[other] { $clients_count } clients
        }.
    }
    { $flag_rows }{ $more ->
        [0] { "" }
       *[other] { "\u000A" }And { $more } more: /clients
    }
    Silence does not mean no pain.{ $lost ->
        [0] { "" }
       *[other] { " " }{ $lost } could not be reached.
    } Pain and fall flags come on their own.
ask-outcome = How did flag #{ $flag } end?
flag-closed = Flag #{ $flag } is closed: { $outcome }. A hold stays until you release it.
ask-flag-note = What is your note to flag #{ $flag }? It is kept with the flag and never sent to the client.
flag-closed-before = Flag #{ $flag } was closed before. Nothing was changed.

## clinician: how-to cards

cards = How-to cards, as clients see them. Tap an exercise to see its card, or to give it a picture of your own.
own-card =
    { how-to }

    { $given ->
        [yes] This is your own picture.
       *[no] This is a drawing.
    } To use another one, send me a photo or a short clip now. Clients will see it.
own-card-kept =
    Kept. Clients see this from now on:
    { how-to }
own-card-wrong-kind = Please send it as a photo or a clip, not as a file.

## clinician: clients

caseload =
    { $count ->
        [0] No client found. Send a part of a name, or: /clients for all, /invite for a new client.
        [one] 1 client.
       *[other] { $count } clients. Those who need you come first: { $need }. To find one, send a part of the name.
    }{ $clients ->
        [none] { "" }
       *[other] { "\u000A\u000A" }{ $clients }
    }{ $pages ->
        [1] { "" }
       *[other] { "\u000A\u000A" }{ $searched ->
            [yes] These are the first. Send more of the name.
           *[no] Page { $page } of { $pages }.
        }
    }
client-page =
    { $name } ({ $state })
    { $held ->
        [yes] On hold until you release it.
       *[no]
            { $total ->
                [none] No bouts today.
               *[other] Today: { $done } of { $total }{ part-side }.
            }
    }
    { $ceiling ->
        [none] Clearance: none yet.
       *[other] Clearance: { $ceiling }.
    }
    { $plan ->
        [none] No plan yet.
       *[other] Plan version { $plan }.
    }
    Phone: { $phone }
client-plan =
    Plan: { part-dose }, { $days ->
        [none] flexible days
       *[other] { $days }
    }{ $beside ->
        [none] { "" }
       *[other]
            { "" }
            Companions: { $beside }
    }
client-week =
    This week:
    { $digest_rows }
client-pain =
    { $scores ->
        [none] No score of pain in 14 days. That is not “no pain”.
       *[other] Pain (0 to 10), last 14 days: { $scores }
    }
client-step =
    Step test on { $day }: { $best ->
        [none] could not complete it, no time
       *[other] { $best } s
    }{ $positive ->
        [yes] , screen positive
       *[no] { "" }
    }{ $slower ->
        [yes] , slower than the best by more than the set share
       *[no] { "" }
    }.{ $best_before ->
        [none] { "" }
       *[other] { " " }Best before: { $best_before } s.
    }{ $trend ->
        [slower] { " " }{ $change } s slower than the one before.
        [faster] { " " }{ $change } s faster than the one before.
        [same] { " " }The same as the one before.
       *[none] { "" }
    }{ $due ->
        [none] { "" }
       *[other] { " " }Next due on { $due }.
    }
step-page =
    Step tests of { $name }: { $count }{ $tests ->
        [none] { "" }
       *[other] { "\u000A" }{ $tests }
    }
    { $home ->
        [yes] The client may do it at home.
       *[no] The client may not do it at home.
    } It is a screen: it does not tell who will fall.
ask-client-step = Step test of { $name }: send both times in seconds, like: 14.8 16.2. For a try without a time send: void. Like: 15.01 void
client-step-noted =
    Logged for { $name }: { $trials }. { $best ->
        [none] Could not complete it.
       *[other] The better time counts: { $best } s.
    } { $positive ->
        [yes] Screen positive.
       *[no] Not screen positive. That does not rule out a fall.
    }{ $slower ->
        [yes] { " " }Slower than the best by more than the set share.
       *[no] { "" }
    }
client-heard =
    { $since ->
        [none] Nothing has come from this client yet.
       *[other] Last contact: { $since } ({ $zone })
    }
client-flag =
    Open: #{ $flag } { part-urgent }{ $kind }, since { $since }{ $words ->
        [none] { "" }
       *[other] : “{ $words }”
    }
judged-days =
    { $closed ->
        [0] { $name } has no closed days yet. A day closes at noon of the next day.
       *[other] Closed days of { $name }, the latest first. Tap one to correct how it was judged.
    }
ask-verdict =
    { $name }, { $day }: { $done } of { $total }{ part-side }, judged “{ $cell }”{ $why ->
        [none] .
       *[other] { " " }({ $why }).
    }
    As what should the day stand? The reps in the record stay as they are.
verdict-kept = { $name }, { $day }: now “{ $cell }”. Week and digest use this from now on.
client-break =
    On a break ({ $away }) { $until ->
        [none] without an end.
       *[other] until { $until }.
    }
ask-client-break-reason = A break for { $name } from today on. Why?
ask-client-break-length = A break for { $name } ({ $away }). How long, with today as the first day? It begins with your tap, and { $name } is told.
client-on-break =
    { $until ->
        [none] { $name } is on a break without an end, and has been told.
       *[other] { $name } is on a break until { $until }, and has been told.
    }{ $too_long ->
        [yes] { " " }A break this long ends clearance: you would have to clear { $name } again.
       *[no] { "" }
    }
client-break-over = The break of { $name } is over, and { $name } has been told.
client-no-break = { $name } is not on a break. Nothing was changed.
not-yours = No such client in your caseload.
client-ready =
    { $name } has joined and waits for your clearance.
    Usual pain: { $usual_pain ->
        [none] not given
       *[other] { $usual_pain } of 10
    }
    { $readiness ->
        [none] Answered “none of these” on every screen.
       *[other]
            Answered “yes or not sure”:
            { $readiness }
    }
    No impact is asked before you clear it.
clearance-waits = { $name } still waits for your clearance. No impact is asked before it.
ask-ceiling =
    { $name }: up to which impact do you clear?
    Usual pain: { $usual_pain ->
        [none] not given
       *[other] { $usual_pain } of 10
    }
    { $readiness ->
        [none] Answered “none of these” on every screen.
       *[other]
            Answered “yes or not sure”:
            { $readiness }
    }
    These are the client's own answers, not findings.
clear-not-answered = { $name } has not answered the readiness questions yet. Clearance comes after them.
cleared =
    { $plan ->
        [yes] Clearance of { $name }: { $ceiling }.
       *[no] Clearance of { $name }: { $ceiling }. Next step: a plan.
    }
client-held = All exercise of { $name } is stopped, and { $name } has been told. Only you can release it.
release-nothing = Nothing is on hold.
release-no-plan = There is no plan to go on with. Please make one first.
release-too-much = A release cannot go above the present { $total } a day. To go higher, change the plan.
ask-release =
    { $name }: go on at which daily total? Before: { part-dose }.
    Tap one, or send a smaller number.
ask-release-day = { $name } goes on at { $total }{ part-side } a day. From when?
released = { $name } is released: { $total }{ part-side } a day, from { $day }. { $name } has been told.

## clinician: words to a client, and cover

ask-words = Your next message here goes to { $name }, as you write it. To leave it, tap a button or send: /clients
words-sent = Sent to { $name }.
words-too-long = That is too long, so nothing was done. Please send at most { $longest } characters.
write-blocked = { $name } has blocked this chat, so nothing can be sent. Phone: { $phone }
write-not-there = { $name } is not in this chat, so nothing can be sent. Phone: { $phone }
from-client =
    { $name } answers you: “{ $words }”
    Phone: { $phone }
cover-told =
    { $yours ->
        [yes] { $name } covers for you
       *[no] You cover for { $clinician }
    }{ $until ->
        [none] , until an admin ends it
       *[other] , to the end of { $until }
    }. { $yours ->
        [yes] { $name } can see your clients and act for you.
       *[no] You find these clients after your own: /clients
    }
cover-ended = { $name } no longer covers for { $clinician }.

released-not-cleared = { $name } is released: { $total }{ part-side } a day, from { $day }. But clearance has lapsed: nothing is asked, and { $name } is told nothing, before you clear it again.

## clinician: the digest

digest =
    Week { $week }: { $first } to { $last }. { $count ->
        [one] 1 client
       *[other] { $count } clients
    }, { $need ->
        [0] none needs
        [one] 1 needs
       *[other] { $need } need
    } you.{ $open ->
        [0] { "" }
       *[other] { " " }Days still open: { $open }.
    }

    { $digest_rows }{ $pages ->
        [1] { "" }
       *[other] { "\u000A\u000A" }Page { $page } of { $pages }.
    }
digest-nobody = You have no clients yet.
ask-digest-time = Your digest comes on { $weekday } at { $at }. Tap another day or hour.
digest-time-kept = Your digest now comes on { $weekday } at { $at }.

## clinician: plans

plan-card =
    Draft for { $name }, not saved yet
    Movement: { $movement }
    Daily total: { $daily_total }{ part-side }
    Reps a bout: { $bout_reps }{ part-side }, at most { $bout_max }
    Days: { $weekdays ->
        [none] flexible
       *[other] { $weekdays }
    }
    Days a week: { $days_min } to { $days_max }
    Rest days between: { $rest_days }
    Hours: { $window }
    Quiet: { $quiet }
    Gap between bouts: { $gap_minutes } min at least
    Start: { $start }
    Review: { $review }
    End: { $end }
    Note to the client: { $note }
    Companions: { $beside }
ask-plan-movement =
    { $movements ->
        [none] No movement is at or below the clearance.
       *[other] Which movement?
    }
ask-plan-daily-total = How many reps a day in all? Tap one or send a number.
ask-plan-bout-reps = How many reps a bout?
ask-plan-bout-max = How many reps a bout at most, when catching up? The same as a bout means no larger bouts.
ask-plan-weekdays = On which days? Tap one, or send days like: Mon, Thu
ask-plan-days-min = How many days a week at least?
ask-plan-days-max = How many days a week at most?
ask-plan-rest-days = How many rest days between two load days?
ask-plan-window = From when to when may bouts fall? Send it like: 8:00-20:00
ask-plan-quiet = In which hours should nothing be asked? Send them like: 12:00-13:00, 15:00-15:30
ask-plan-gap-minutes = How many minutes between two bouts at least?
ask-plan-start = From which day? Send it like: 12 March
ask-plan-review = When will you review the plan? Send it like: 12 March. Or send: none
ask-plan-end = On which day does it end? Send it like: 12 March. Or send: none
ask-plan-note = Which note should the client see with the plan?
ask-plan-companions =
    Which exercises beside the impact? Now: { $beside }
    Tap one to put it in or take it out. Or send it with its numbers, like: hover hold 5 s, 3 rounds, 2 days
plan-beside = Companions: { $beside }
plan-first-day =
    First day, { $day }, { $movement }{ part-side }:
    { $bouts }
dose-table =
    Ways to split the day (theoretical, from animal data, not a target):
    { $rows }
plan-estimate = The force of { $movement } ({ $force } body weights) is an estimate: no published value was found. Saving says yes to it for this client.
plan-save =
    { $estimate ->
        [yes] Save this plan, and accept the estimate?
       *[no] Save this plan?
    }
plan-saved =
    Plan version { $version } of { $name } is saved. First day: { $day }.{ $cleared ->
        [yes] { "" }
       *[no] { " " }No impact is asked before you clear it.
    }{ $joined ->
        [yes] { "" }
       *[no] { " " }{ $name } has not joined yet.
    }
plan-cancelled = The draft is dropped. Nothing was changed.
fault-unknown-movement = { $field }: not known.{ part-values }
fault-above-ceiling =
    { $most_force ->
        [none] { $field }: { $level } is above the clearance: { $ceiling }.{ part-values }
       *[other] { $field }: { $level } with { $force } body weights is above the clearance: { $ceiling }, up to { $most_force }.{ part-values }
    }
fault-estimate-not-accepted = { $field }: its force of { $force } body weights is an estimate that you have not accepted.{ part-values }
fault-before-start = { $field }: comes before the start, { $start }.{ part-values }
fault-after-end = { $field }: comes after the end, { $end }.{ part-values }
fault-out-of-bounds = { $field }: can be { $low } to { $high }.{ part-values }
fault-not-weekdays = { $field }: a day is named twice or is no weekday.{ part-values }
fault-below-bout = { $field }: is below the { $bout } reps of a bout.{ part-values }
fault-below-minimum = { $field }: is below the minimum of { $days_min }.{ part-values }
fault-no-room-for-rest =
    { $rest_days ->
        [one] { $field }: too many for 1 rest day between load days.{ part-values }
       *[other] { $field }: too many for { $rest_days } rest days between load days.{ part-values }
    }
fault-not-as-many-as-days = { $field }: { $count } chosen, but the plan says { $days_min } to { $days_max } a week.{ part-values }
fault-too-close =
    { $rest_days ->
        [one] { $field }: too close for 1 rest day between load days, week ends included.{ part-values }
       *[other] { $field }: too close for { $rest_days } rest days between load days, week ends included.{ part-values }
    }
fault-no-common-hours = { $field }: on { $weekday } no bout fits within { $start } to { $end } and the client's own hours.{ part-values }
fault-too-many-reps =
    { $field }: only { $bouts ->
        [one] 1 bout fits
       *[other] { $bouts } bouts fit
    } in a day. Any one of these would work:
    - daily total { $total }{ $bout ->
        [none] { "" }
       *[other]
            { "" }
            - at most { $bout } reps a bout
    }{ $gap ->
        [none] { "" }
       *[other]
            { "" }
            - a gap of { $gap } minutes
    }
help-clinician =
    /clients shows your caseload; send a part of a name to find a client.
    /invite makes a link for a new client.
    /cards shows how each exercise is explained, and takes your own pictures.
    Flags come on their own. Close each one with its outcome.
welcome-clinician = Hello { $name }. You joined { $practice } as a clinician. Start with /invite or /clients.

## clinician: the week as picture and file

digest-picture =
    Week { $week }, { $first } to { $last }.
    { $count ->
        [one] 1 client
       *[other] { $count } clients
    }, { $need ->
        [0] nobody needs you.
        [one] 1 needs you.
       *[other] { $need } need you.
    }
digest-file =
    Week { $week }, { $first } to { $last }, as a table for a spreadsheet.
    { $count ->
        [one] 1 client
       *[other] { $count } clients
    }. It holds health data: keep it where others cannot read it.

## report: words drawn in pictures and files

picture-title = Week { $week }: { $first_short } to { $last_short }
picture-by = { $clinician }, { $practice }
picture-made =
    As of { $made_at } ({ $zone }){ $open ->
        [0] { "" }
        [one] , 1 day still open
       *[other] , { $open } days still open
    }
picture-need-you =
    { $count ->
        [one] 1 client needs you
       *[other] { $count } clients need you
    }
picture-others =
    { $count ->
        [0] No other clients
        [one] 1 other client
       *[other] { $count } other clients
    }
picture-weekday = { $weekday_short }
picture-days = days
picture-pain = pain
picture-cell = { $cell }
picture-why = { $why }
picture-mark = { $mark }
picture-figures = days: counted of needed. pain: worst, 0 to 10.
report-period = { $start } to { $end }
report-by = { $clinician }, { $practice }. Made { $made_at } ({ $zone }).
report-plan = Plan
report-no-plan = No plan in this period.
report-dose = { part-dose }, at most { $bout_max } in one go.
report-days =
    At least { $days_min }, at most { $days_max } days a week: { $weekdays ->
        [none] flexible
       *[other] { $weekdays }
    }. Hours: { $window }. Gap: { $gap_minutes } min at least.
report-dates = From { $start }. Review: { $review }. End: { $end }.
report-ceiling = Clearance: { $ceiling }.
report-note = Note to the client: { $note }
report-weeks = Weeks
report-week = Week
report-days-head = Days
report-reps-head = Reps
report-bouts-head = Bouts
report-spread-head = Spread*
report-pain-head = Pain
report-excused-head = Excused
report-open-head = Open
report-all = All shown
report-pain = Worst pain
report-pain-row =
    { $score } of 10, { $day }{ $place ->
        [none] { "" }
       *[other] , { $place }
    }
report-falls = Falls
report-fall-row =
    { $day }: { $injured ->
        [yes] injured
        [no] no injury said
       *[other] injury not known
    }
report-flags = Flags
report-flag-row =
    #{ $flag } { $day }: { $kind }. { $outcome ->
        [none] Open.
       *[other] { $outcome }.
    }
report-steps = Step tests, the latest first: { $results }
report-holds = Holds
report-hold-row =
    { $day } to { $until ->
        [none] now
       *[other] { $until }
    }
report-none = none
report-more = … and { $count } more
report-legend = Reps: done, in brackets at most the daily total, of prescribed. Days: counted of needed. Pain: worst of 0 to 10. Excused days are in no figure; days still open may change.
report-theory = * Spread is theoretical, from animal data: how well bouts were spread over the day, against the plan's own times. It is not a target.
report-caution = Not a diagnosis. Pain, falls and reps are as the client reported them; no answer is not “no pain”. A licensed professional decides what follows from this page.

## admin: the practice

flag-admin = #{ $flag } { part-urgent }A flag about { $name } is open, and the clinician cannot be reached in chat. Please see that a clinician looks at it now.
flag-still-open = #{ $flag } Urgent. A flag about { $name } is still open, and { $clinician } has not closed it. Please see that a clinician looks at it now.
staff-unreachable = { $name } ({ $role }) has blocked this chat or cannot be reached. Messages to { $name } wait.
set-aside =
    Update { $update } could not be handled and was set aside. The others go on.{ $waiting ->
        [one] { "" }
       *[other] { " " }{ $waiting } are set aside now.
    } Whoever sent it was told. Please tell whoever runs the server.
aside =
    { $count ->
        [0] Nothing is set aside. Every message and tap was handled.
        [one]
            1 update could not be handled. It came { $since }.
            It changed nothing, and whoever sent it was told. Once the server is repaired, have it tried again.
       *[other]
            { $count } updates could not be handled. The oldest came { $since }.
            They changed nothing, and whoever sent them was told. Once the server is repaired, have them tried again.
    }
aside-one =
    Update { $update }, { $name ->
        [none] from somebody who is not in the practice
       *[other] from { $name }
    }, { $since }. It could not be handled.{ $wrote_since ->
        [yes] { " " }{ $name } has written or tapped since. What was sent once more would count twice.
       *[other] { "" }
    }
ask-drop =
    Drop update { $update }, { $name ->
        [none] from somebody who is not in the practice
       *[other] from { $name }
    }, { $since }? It is then never read, also if it is about pain. Has somebody asked what it was?
aside-again =
    { $count ->
        [one] 1 update is
       *[other] { $count } updates are
    } tried again now, in order. Each counts for the time it was sent. You are told if it does not work.
aside-dropped = Update { $update } was dropped.
aside-over = That is not set aside any more. I changed nothing.
welcome-admin = Hello { $name }. You joined { $practice } as an admin. Start with /settings, then /invite.
numbers-missing = The practice phone or the emergency number is not set yet. Nobody is asked for bouts before both are.
help-admin =
    /people shows who is in the practice; send a part of a name to find somebody.
    /invite makes a link for somebody new.
    /settings shows and changes the practice's settings.
    /cards shows how each exercise is explained, and takes your own pictures.
    /aside shows messages and taps that could not be handled.
settings =
    The settings of the practice. Tap one to change it.
    { $settings }
ask-setting =
    { $setting }. Now: { $value }{ $unit }
    { $does }
    { $low ->
        [none] Send the new value, or: /settings to go back.
       *[other] Send a number from { $low } to { $high }, or: /settings to go back.
    }
setting-kept =
    Noted. { $setting }: { $value }{ $unit }
    All settings: /settings
setting-unknown = There is no setting { $name }.
setting-out-of-bounds = { $setting }: please send a number from { $low } to { $high }.
setting-pain-order = { $setting }: “go on” has to stay below “stop”. Nothing was changed.
setting-bad-zone = { $setting }: please send a zone like: Europe/Berlin
setting-bad-window = { $setting }: please send hours like: 08:00-20:00
setting-bad-week-start = { $setting }: please send one weekday, like: Monday
setting-bad-work-hours = { $setting }: please send hours like: 09:00-17:00
setting-bad-work-days = { $setting }: please send weekdays, like: Mon, Tue, Fri
setting-bad-erase-left = { $setting }: please send: yes or no
setting-bad-files-in-chat = { $setting }: please send: yes or no
setting-bad-number = { $setting }: please send a number that can be called.
setting-too-long = { $setting }: please send at most { $longest } characters.
cover =
    { $covers ->
        [none] Nobody covers for { $clinician } now.
       *[other]
            Who covers for { $clinician }:
            { $covers }
    }
    { $colleagues ->
        [none] There is no other clinician who could.
       *[other] Tap a colleague to start a cover or to change its end.
    }
ask-cover-until = { $name } covers for { $clinician }: until when? Tap one, or send a date: it is the last day. Or send: none
cover-kept =
    { $name } covers for { $clinician }, { $until ->
        [none] until you end it
       *[other] to the end of { $until }
    }. Both are told.
cover-is-past = That day is past. Please send today or a later day.
people =
    { $searched ->
        [yes] { $count ->
            [one] 1 person found.
           *[other] { $count } people found.
        }
       *[no] { $count ->
            [one] 1 person in the practice.
           *[other] { $count } people in the practice. To find one, send a part of the name.
        }
    }{ $pages ->
        [none] { "" }
        [1] { "" }
       *[other] { "\u000A" }{ $searched ->
            [yes] These are the first. Send more of the name.
           *[no] Page { $page } of { $pages }.
        }
    }
person =
    { $name }, { $role } ({ $state }){ $clinician ->
        [none] { "" }
       *[other]
            { "" }
            Clinician: { $clinician }
    }
no-such-person = There is no such person.
no-such-client = There is no such client.
ask-invite-role = Whom do you invite?
ask-invite-name = Name of the { $role }? First name or alias is enough.
ask-invite-clinician = Who treats { $name }?
invite-name-length = Please send a name of 1 to { $longest } characters.
invite-no-clinician = A client needs a clinician. Please invite a clinician first.
invitation =
    Link for { $name } ({ $role }). It works once, for { $days ->
        [one] 1 day
       *[other] { $days } days
    }. Send it only to { $name }:
    { $link }
ask-discharge = End the care of { $name } here? Everything stops. The record stays.
ask-erase = Erase all that is kept about { $name } (client { $person })? This cannot be undone. Ask first how long the law wants it kept. The audit trail keeps a number and no values.
erased = All that was kept about client { $person } is erased. Backups made before today still hold it{ $until ->
        [none] { "" }
       *[other] , the last one until { $until }
    }: delete them by then. The chat service may keep its copy.
data-wanted = { $name } asks for a copy of all data. On the server: boutwise export --client { $person } --format json --out FILE
discharged = The care of { $name } here has ended. Nothing more is sent.

## button: bouts

button-did-all = Did all
button-fewer = Fewer
button-later = Later
button-skip = Skip
button-hurts = Something hurts
button-how = Show me how
button-exercise = { $exercise }
button-fell = I fell
button-number = { $number }
button-yes-number = Yes, { $number }
button-yes = Yes
button-no = No

## button: pain and falls

button-mistake = I tapped this by mistake
button-no-sign = None of these
button-sign-chest = { name-sign-chest }
button-sign-faint = { name-sign-faint }
button-sign-breath = { name-sign-breath }
button-sign-one-side-weak = { name-sign-one-side-weak }
button-sign-face-speech = { name-sign-face-speech }
button-sign-head-knock = { name-sign-head-knock }
button-sign-no-weight = { name-sign-no-weight }
button-sign-cannot-get-up = { name-sign-cannot-get-up }
button-sign-back-weak-legs = Back pain plus legs or bladder
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
button-new = It is new
button-known = I know it
button-sharper = Sharper
button-as-usual = Not sharper
button-fall-today = { name-when-today }
button-fall-yesterday = { name-when-yesterday }
button-fall-earlier = { name-when-earlier }
button-doing-exercise = { name-doing-exercise }
button-doing-walking = { name-doing-walking }
button-doing-stairs = { name-doing-stairs }
button-doing-getting-up = { name-doing-getting-up }
button-doing-other = { name-doing-other }

## button: joining

button-agree = I agree
button-not-agree = I do not agree
button-none-of-these = None of these
button-page-back = Back
button-page-on = More
button-digest-time = Day and hour
button-weekday = { $weekday_short }
button-hour = { $at_short }
button-keep-days = Keep these days
button-other-days = Other days
button-week-day = { part-chosen }{ $day_short }
button-own-day = { part-chosen }{ $weekday_short }
button-week-none = No, none of these
button-week-pain = Pain
button-week-fall = A fall
button-week-leak = Leaking urine
button-yes-or-unsure = Yes, or not sure
button-that-is-all = That is all
button-keep = Keep these times
button-change-zone = Change zone
button-change-hours = Change hours
button-change-quiet = Change quiet times
button-change-days = Change days
button-pass-on = Yes, pass it on
button-ready-broken-bone = { part-chosen }Broken bone, 12 weeks
button-ready-spine-fracture = { part-chosen }Spine, or many broken bones
button-ready-surgery = { part-chosen }Operation, 12 weeks
button-ready-two-falls = { part-chosen }2 or more falls
button-ready-bone-injections = { part-chosen }Bone shots stopped
button-ready-height = { part-chosen }Lost height
button-ready-heart = { part-chosen }Heart, pressure or breath
button-ready-dizzy-spells = { part-chosen }Dizzy or fainted
button-ready-numb-feet = { part-chosen }Numb feet
button-ready-eye = { part-chosen }Eye surgery or retina
button-ready-blood-thinners = { part-chosen }Blood thinners
button-ready-new-pain = { part-chosen }New groin or back pain
button-ready-joint = { part-chosen }Swollen or sore joint
button-ready-leaking = { part-chosen }Leaks or heavy feeling
button-ready-pregnant = { part-chosen }Pregnant
button-ready-replacement = { part-chosen }New hip, knee or other
button-ready-steroids = { part-chosen }Steroids for months

## button: breaks

button-away-travel = { name-away-travel }
button-away-illness = { name-away-illness }
button-away-other = { name-away-other }
button-health-again = My health has changed
button-break-today = Today only
button-break-3 = 3 days
button-break-7 = 1 week
button-break-14 = 2 weeks
button-break-unsure = Not sure yet
button-no-break = No break
button-break-one-day = 1 day
button-cancel-break = No break after all
button-another-break = Another break
button-back-from-break = I'm back
button-change-break = Change how long
button-break = Break
button-end-break = End break

## button: companions

button-did-companion =
    { $rounds ->
        [one] Did it
       *[other] Did all { $rounds } rounds
    }
button-some-rounds =
    { $done ->
        [one] 1 round
       *[other] { $done } rounds
    }
button-not-today = Not today

## button: clinician

button-use-drawing = Use the drawing again
button-close-flag = Close flag
button-close-flag-number = Close flag #{ $flag }
button-write = Write
button-reply = Reply
button-open-client = Open client
button-all-clients = All clients
button-client =
    { $flags ->
        [0] { $name }
        [one] 1 flag: { $name }
       *[other] { $flags } flags: { $name }
    }
button-clear = Clearance
button-plan = Plan
button-hold = Stop all exercise
button-closed-days = Closed days
button-judged-day = { $day_short }: { $cell }
button-verdict-counted = It counts
button-verdict-excused = Excused
button-verdict-not = It does not count
button-release = Release
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
button-flexible = Flexible
button-none = None
button-field-companions = { name-field-companions }
button-companion = { $companion }
button-preview = Preview
button-back = Back
button-change = Change
button-cancel = Cancel
button-save = Save
button-save-with-yes = Save, accept the estimate
button-dose-half = { $total } a day
button-dose-as-before = { $total } a day, as before
button-from-today = From today
button-from-tomorrow = From tomorrow

## button: the step test

button-step-start = See how it is done
button-step-ready = Yes, somebody is beside me
button-step-later = Not now
button-step-take-back = Take it back
button-step-tests = Step tests
button-step-log = Log a step test
button-step-no-time = Both without a time
button-step-home = Allow it at home
button-step-not-home = No longer at home

## button: own data, and to leave

button-data-files = Send me all of it
button-stay = No, I stay
button-leave = Leave
button-leave-sure = Yes, leave for good

## button: admin and roles

button-language = { $language }
button-setting = { $setting }
button-role-client = Client
button-role-clinician = Clinician
button-role-admin = Admin
button-person = { $role }: { $name }
button-invite-again = New link
button-discharge = End care
button-erase = Erase all data
button-yes-erase = Yes, erase all
button-yes-discharge = Yes, end care
button-cover = Cover
button-cover-by = { $name } covers
button-end-cover = End cover by { $name }
button-to-person = Back
button-no-end = No end
button-weeks =
    { $number ->
        [one] 1 week
       *[other] { $number } weeks
    }
button-all-people = All people
button-set-aside = All set aside
button-aside =
    { $name ->
        [none] Not in the practice
       *[other] { $name }
    }: { $update }
button-try-again = Try again
button-try-all = Try all again
button-drop = Drop
button-yes-drop = Yes, drop

## command: the chat's menu

command-today = How today stands
command-week = Your week
command-how = How to do your exercise
command-hurts = Something hurts
command-undo = Take back the last number
command-health = Tell us that your health changed
command-break = Have a break
command-back = End your break
command-steptest = The step test
command-times = See or change your times
command-data = What is kept about you
command-leave = Leave for good
command-help = Help, and whom to call
command-clients = Your clients
command-digest = The week so far
command-cards = How-to cards and their pictures
command-invite = Invite somebody
command-people = Who is in the practice
command-settings = The practice's settings
command-aside = What could not be handled
command-language = Change the language (idioma)

## name: movements

name-movement-marching = marching steps
    .one = marching step
name-movement-stepping-jack = stepping jacks
    .one = stepping jack
name-movement-gentle-heel-drop = gentle heel drops
    .one = gentle heel drop
name-movement-stomp = stomps
    .one = stomp
name-movement-small-jump = small jumps
    .one = small jump
name-movement-hop = hops
    .one = hop
name-movement-jumping-jack = jumping jacks
    .one = jumping jack
name-movement-firm-heel-drop = firm heel drops
    .one = firm heel drop

## name: how-to cards (common practice, no source; 3 cues, where to hold on, what to avoid)

name-card-marching =
    1. Stand tall and hold on.
    2. Lift one knee, as high as feels easy.
    3. Put that foot down. Lift the other knee.
    .hold = One hand on the kitchen counter, or on a heavy chair.
    .avoid = Do not lean back. Do not twist.
name-card-stepping-jack =
    1. Stand tall with your feet together.
    2. Step one foot out to the side. Lift your arms.
    3. Step back in. Arms down. Then the other side.
    .hold = Keep the kitchen counter in reach. If you sway, hold it.
    .avoid = Do not lean. Do not rush. Keep the floor dry and clear.
name-card-gentle-heel-drop =
    1. Stand tall and hold on.
    2. Go up on your toes, slowly.
    3. Let your heels come down softly.
    .hold = Both hands on the kitchen counter, or on a heavy chair.
    .avoid = Do not lean or bend. Do not lock your knees.
name-card-stomp =
    1. Stand tall and hold on.
    2. Lift one foot a little.
    3. Put it down flat and firm. Do all on one side, then the other side.
    .hold = One hand on the kitchen counter, or on a heavy chair.
    .avoid = Do not land on your heel or your toes only. Do not lean.
name-card-small-jump =
    1. Stand with your knees a little bent.
    2. Jump up, just off the floor.
    3. Land softly. Bend your knees as you land.
    .hold = Both hands on the kitchen counter.
    .avoid = Do not land with stiff knees. Do not bend or twist your back.
name-card-hop =
    1. Stand on one leg, with the knee a little bent.
    2. Hop up, just off the floor.
    3. Land softly on the same foot. Do all on one side, then the other side.
    .hold = Both hands on the kitchen counter.
    .avoid = Do not land with a stiff knee. Do not hop if you sway.
name-card-jumping-jack =
    1. Stand tall with your feet together.
    2. Jump your feet apart. Swing your arms up.
    3. Jump back in. Arms down. Land softly, with bent knees.
    .hold = Keep the kitchen counter in reach.
    .avoid = Do not land with stiff knees. Keep the floor dry and clear.
name-card-firm-heel-drop =
    1. Stand tall and hold on.
    2. Go up on your toes, as high as you can.
    3. Let your heels drop, so that you feel them land.
    .hold = Both hands on the kitchen counter, or on a heavy chair.
    .avoid = Do not lean or bend. Do not lock your knees.
name-card-back-raise =
    1. Lie face down, a pillow under your belly, arms by your sides.
    2. Lift your chest a little. Look at the floor.
    3. Come down slowly. Rest.
    .hold = Keep a heavy chair near, to help you get up.
    .avoid = Do not lift high or bend your neck back. Keep breathing.
name-card-hover-hold =
    1. Go on your hands and knees. Tuck your toes under.
    2. Lift both knees just off the floor. Hold.
    3. Put your knees down. Rest.
    .hold = Keep a heavy chair near, to help you get up.
    .avoid = Do not round your back. Keep breathing.

## name: calendar

name-weekday-0 = Mon
name-weekday-1 = Tue
name-weekday-2 = Wed
name-weekday-3 = Thu
name-weekday-4 = Fri
name-weekday-5 = Sat
name-weekday-6 = Sun
name-month-1 = January
    .short = Jan
name-month-2 = February
    .short = Feb
name-month-3 = March
name-month-4 = April
name-month-5 = May
name-month-6 = June
name-month-7 = July
name-month-8 = August
    .short = Aug
name-month-9 = September
    .short = Sept
name-month-10 = October
    .short = Oct
name-month-11 = November
    .short = Nov
name-month-12 = December
    .short = Dec

## name: pain and falls

name-sign-chest = Chest pain or pressure
name-sign-faint = Fainted
name-sign-breath = Hard to breathe
name-sign-one-side-weak = One side is weak
name-sign-face-speech = Face droops or speech slurs
name-sign-head-knock = Fell and hit the head
name-sign-no-weight = Cannot put weight on a leg
name-sign-cannot-get-up = Cannot get up
name-sign-back-weak-legs = Back pain, weak legs or bladder
name-sign-emergency = Called for help
name-sign-self-harm = Words of self-harm
name-sign-calf = One calf sore and swollen
name-sign-eye = Flashes or dark spots in eye
name-sign-sudden-back = Sudden new back pain
name-sign-dizzy = Dizzy, or heart races
name-sign-groin-thigh = New ache in groin or thigh
name-sign-foot-shin-spot = Sore spot on foot or shin
name-sign-leak = Leaking urine
name-sign-sore = Just sore muscles
name-sign-none = None of the signs
name-place-back = Back
name-place-hip = Hip
name-place-groin = Groin
name-place-thigh = Thigh
name-place-knee = Knee
name-place-shin = Shin
name-place-foot = Foot
name-place-elsewhere = Somewhere else
name-when-during = While I do it
name-when-after = After it
name-when-next-morning = The next morning
name-when-other = At other times
name-when-today = Today
name-when-yesterday = Yesterday
name-when-earlier = Before that
name-doing-exercise = My exercise
name-doing-walking = Walking
name-doing-stairs = On the stairs
name-doing-getting-up = Getting up
name-doing-other = Something else
name-step-sign = warning signs
name-step-place = where it hurts
name-step-score = how much it hurts
name-step-when = when
name-step-new = new or known
name-step-sharper = sharper or not
name-step-injured = hurt in the fall
name-step-new-pain = new pain since the fall
name-step-doing = what happened

## name: days of a week

name-cell-counted = counted
name-cell-partial = partly done
name-cell-missed = not done
name-cell-excused = excused
name-cell-open = still open
name-cell-ahead = still to come
name-cell-rest = not planned
name-cell-extra = extra, not planned
name-why-no-answer = no answer
name-why-declined = declined
name-why-break = on a break
name-why-hold = on hold
name-why-unreachable = could not be reached
name-why-bot-down = system was down
name-why-not-asked = not asked
name-why-travel = travel
name-why-clinician = your correction
name-mark-no-answer = N
name-mark-declined = D
name-mark-break = B
name-mark-hold = H
name-mark-unreachable = U
name-mark-bot-down = S
name-mark-not-asked = A
name-mark-travel = T
name-mark-clinician = C

## name: readiness

name-ready-broken-bone = A broken bone in the last 12 weeks
name-ready-spine-fracture = A broken bone in the spine at any time, or more than 1 broken bone after small falls
name-ready-surgery = An operation in the last 12 weeks
name-ready-two-falls = 2 or more falls in the last year
name-ready-bone-injections = Bone shots that you stopped a short time ago
name-ready-height = You have lost height
name-ready-heart = Heart, blood pressure or breathing trouble that a doctor told you to take care with
name-ready-dizzy-spells = Dizzy spells or fainting in the last year
name-ready-numb-feet = Numb feet
name-ready-eye = Eye surgery, or a retina that came loose
name-ready-blood-thinners = You take pills that thin the blood
name-ready-new-pain = New pain in the groin, thigh or back
name-ready-joint = A joint that is swollen or hurts now
name-ready-leaking = Leaking urine, or a heavy feeling down below, when you jump
name-ready-pregnant = You are pregnant
name-ready-replacement = A new hip, knee or other joint
name-ready-steroids = Steroid pills for months
name-ready-unsure-bones = Not sure which: bones and falls
name-ready-unsure-heart = Not sure which: heart, head and balance
name-ready-unsure-else = Not sure which: everything else

## name: flags, people, plans

name-reason-hold = on hold
name-reason-no-clearance = not cleared
name-reason-pain = pain or a warning sign
name-reason-fall = a fall
name-reason-question-open = said that something hurts, then no answer
name-reason-not-read = a message that I could not read
name-reason-too-much = more than planned
name-reason-words = a message for you
name-reason-unreachable = cannot be reached in chat
name-reason-week-out-of-reach = week out of reach
name-reason-missed-days = planned days in a row not done
name-reason-silent = silent
name-reason-break = asked for a break
name-reason-lapsed = clearance lapsed
name-reason-review-due = review due
name-reason-step-test = step test
name-reason-step-due = step test due
name-reason-left = left
name-reason-plan-ended = plan ended
name-kind-pain = Pain or a warning sign
name-kind-fall = A fall
name-kind-question-open = Said that something hurts, then no answer
name-kind-not-read = A message that I could not read. It may be about pain or a fall
name-kind-too-much = More than planned
name-kind-words = A message for you
name-kind-plan-ended = The plan has ended
name-kind-review-due = Review is due
name-kind-lapsed = Clearance has lapsed
name-kind-break = A break
name-kind-step-test = Step test
name-kind-step-due = Step test is due
name-kind-left = Has left
name-kind-silent = Silent
name-kind-missed-days = Planned days in a row not done
name-kind-week-out-of-reach = This week cannot be kept
name-kind-unreachable = Cannot be reached in chat
name-outcome-called = Called
name-outcome-referred = Referred
name-outcome-advised = Advised
name-outcome-no-action = No action
name-outcome-note = Noted only
name-outcome-restored = Ended by itself, kept again
name-outcome-heard = Ended by itself, the client wrote
name-outcome-back = Ended by itself, back in chat
name-outcome-over = Ended by itself, over
name-outcome-cleared = Cleared again
name-outcome-tested = Ended by itself, tested
name-outcome-taken-back = Ended by itself, taken back
name-outcome-planned = A new plan
name-ceiling-none = No impact
name-ceiling-low = Low impact
name-ceiling-moderate = Moderate impact
name-ceiling-high = High impact
name-role-client = client
name-role-clinician = clinician
name-role-admin = admin
name-state-invited = invited
name-state-joining = joining
name-state-ready = active
name-state-left = left
name-state-discharged = discharged
name-field-movement = Movement
name-field-daily-total = Daily total
name-field-bout-reps = Reps a bout
name-field-bout-max = Most a bout
name-field-weekdays = Weekdays
name-field-days-min = Fewest days
name-field-days-max = Most days
name-field-rest-days = Rest days
name-field-window = Hours
name-field-quiet = Quiet times
name-field-gap-minutes = Gap
name-field-start = Start
name-field-review = Review
name-field-end = End
name-field-note = Note
name-field-companions = Companions

## name: breaks

name-away-travel = Travel
name-away-illness = Illness
name-away-other = Something else

## name: companions

name-companion-back-raise = Back raise, face down
name-companion-hover-hold = Hover hold, hands and knees

## name: lapses

name-because-readiness = A new “yes or not sure” about health
name-because-injury = An injury
name-because-break = A long break
name-because-review = The review date passed 7 days ago

## name: settings

name-setting-name = Practice name
    .does = Clients see it in the first message.
    .unit = { "" }
name-setting-phone = Practice phone
    .does = Clients call it. Nobody is asked for bouts before it is set.
    .unit = { "" }
name-setting-emergency-number = Emergency number
    .does = Clients are told to call it. Nobody is asked for bouts before it is set.
    .unit = { "" }
name-setting-crisis-line = Crisis line
    .does = Given at words of self-harm. Without it, the emergency number is given.
    .unit = { "" }
name-setting-answer-hours = Answer hours
    .does = The hours in which the practice answers, as clients see them.
    .unit = { "" }
name-setting-zone = Time zone
    .does = The zone that a new client starts with.
    .unit = { "" }
name-setting-window = Hours
    .does = The hours that a new client or plan starts with.
    .unit = { "" }
name-setting-late-minutes = Drop if late by
    .does = A prompt that would come later than this is not sent.
    .unit = { " " }{ $value ->
            [one] minute
           *[other] minutes
        }
name-setting-question-minutes = Pain answer within
    .does = A question about pain or a fall that stays open for longer becomes a hold.
    .unit = { " " }{ $value ->
            [one] minute
           *[other] minutes
        }
name-setting-invitation-days = Link works for
    .does = How long a link works.
    .unit = { " " }{ $value ->
            [one] day
           *[other] days
        }
name-setting-tau-hours = Recovery time
    .does = The time constant of recovery between two bouts (theoretical).
    .unit = { " " }{ $value ->
            [one] hour
           *[other] hours
        }
name-setting-close-hour = Day closes at
    .does = Until this hour of the next day, entries count for a day.
    .unit = { " " }o'clock, the next day
name-setting-count-percent = Day counts from
    .does = A day counts when this share of its total is done.
    .unit = { " " }percent
name-setting-pain-carry-on = Go on, pain up to
    .does = Known pain up to this score changes nothing.
    .unit = { " " }of 10
name-setting-pain-hold = Stop, pain from
    .does = Pain from this score on stops all exercise.
    .unit = { " " }of 10
name-setting-morning-rise = Stop, morning rise
    .does = Stops all exercise when pain next morning is this much above usual.
    .unit = { " " }above usual
name-setting-morning-if-unknown = Stop, usual not known
    .does = Stops all exercise from this score on when the usual pain is not known.
    .unit = { " " }of 10
name-setting-spread-minutes = Spread of starts
    .does = Shifts each client's day by up to this much, so that not all are asked at once.
    .unit = { " " }{ $value ->
            [one] minute
           *[other] minutes
        }
name-setting-clearance-reminder-days = Clearance reminder
    .does = The clinician is reminded after so many days without clearance.
    .unit = { " " }{ $value ->
            [one] day
           *[other] days
        }
name-setting-week-start = Week starts on
    .does = The weekday on which a week starts.
    .unit = { "" }
name-setting-missed-limit = Flag after days not done
    .does = So many planned days in a row that did not count raise a flag.
    .unit = { " " }{ $value ->
            [one] day
           *[other] days
        }
name-setting-silent-days = Flag after silence of
    .does = A client of whom nothing came for so long is flagged.
    .unit = { " " }{ $value ->
            [one] day
           *[other] days
        }
name-setting-repeat-hours = Repeat urgent flag after
    .does = An urgent flag that is still open after so long goes out again, then to others.
    .unit = { " " }{ $value ->
            [one] hour
           *[other] hours
        }
name-setting-work-hours = Working hours
    .does = Flags that are not urgent come within these hours.
    .unit = { "" }
name-setting-work-days = Working days
    .does = The weekdays with working hours.
    .unit = { "" }
name-setting-files-in-chat = Files in chat
    .does = Whether files with data are sent in chat: yes or no.
    .unit = { "" }
name-setting-step-cutoff = Step test cut-off
    .does = If the better of two times is over this, it is “screen positive”. Usual: 15. Other groups have others.
    .unit = { " " }seconds
name-setting-step-slower-percent = Slower step test
    .does = A step test slower than the client's best by more than this is flagged.
    .unit = { " " }percent
name-setting-step-weeks = Step test again
    .does = A retest is due so long after the last one.
    .unit = { " " }{ $value ->
            [one] week
           *[other] weeks
        }
name-setting-erase-left = Erase those who left
    .does = Whether the data of a client who left are erased 7 days later: yes or no. Ask first how long the law wants them kept.
    .unit = { "" }
name-setting-backup-days = Backups expire
    .does = How long a backup can be put back. Delete it then: it may hold what was erased since.
    .unit =
        { $value ->
            [one] day
           *[other] days
        }
