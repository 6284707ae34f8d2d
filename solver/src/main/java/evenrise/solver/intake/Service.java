package evenrise.solver.intake;

import java.util.Optional;
import java.util.regex.Pattern;

/** Whether a control may switch a piece, by the words of a list in English, German, French and Spanish. */
enum Service {
    SWITCHED,
    /** The list says so. */
    UNSWITCHED,
    /** Would be lost where it is switched off unasked: left unswitched until somebody says that it may be. */
    ASKED,
    /** Fire alarm, emergency lighting and the like: not fed from here unless somebody asks for it. */
    LIFE_SAFETY,
    /** Life safety that somebody asked to have a place. */
    LIFE_SAFETY_HERE;

    private static final Pattern FIRE =
            Pattern.compile("\\b(fire ?alarms?|fire (detection|panel|command|pump|curtain|door|safety)|smoke"
                    + " (alarm|detector|detection|control|vent|extract|exhaust)\\w*|sprinklers?|voice"
                    + " (alarm|evacuation)|evac|mass"
                    + " notification|brandmelde\\w*|brandmelder|rauchmelder|rauchabzug\\w*|entrauchung\\w*|rwa|sprachalarm\\w*|feuer(melde|alarm|schutz|wehr)\\w*|sprinkleranlage|alarme?"
                    + " incendie|detection incendie|desenfumage|ssi|alarma (de|contra) incendios?|deteccion de"
                    + " incendios?|contra ?incendios?|evacuacion|evacuation)\\b");
    private static final Pattern EMERGENCY = Pattern.compile(
            "\\b(life safety|emergency"
                    + " (lights?|lighting|luminaires?|lamps?|inverter|signs?|exit|egress|power|generator|communication\\w*|system)|exit"
                    + " (lights?|lighting|signs?)|egress"
                    + " (lights?|lighting)|notbeleuchtung\\w*|notlicht\\w*|notstrom\\w*|sicherheitsbeleuchtung\\w*|sicherheitslicht\\w*|sicherheitsstrom\\w*|rettungszeichen\\w*|fluchtweg\\w*|eclairage"
                    + " de (securite|secours)|baes|securite incendie|source de"
                    + " (securite|secours)|(alumbrado|iluminacion|luz|luces) de emergencia|senal de salida|seguridad de vida)\\b");
    private static final Pattern UPS =
            Pattern.compile("\\b(ups|uninterruptible\\w*|usv|unterbrechungsfrei\\w*|onduleurs?|asi|sai|alimentacion"
                    + " ininterrumpida)\\b");
    private static final Pattern NETWORK_CORE =
            Pattern.compile("\\b(core (network )?(switch|router)\\w*|network core|core network|backbone|kern"
                    + " ?switch|netzwerkkern|coeur de reseau|commutateur (de )?coeur|nucleo de red)\\b");
    private static final Pattern LEAVE_ON = Pattern.compile(
            "\\b(do not (switch|interrupt|turn off)|don'?t switch|not (to be )?switched|unswitched|always on|never"
                    + " off|nicht (schalten|geschaltet|schaltbar)|dauerspannung|dauernd ein|ne pas (couper|commuter)|non"
                    + " commute\\w*|toujours alimente\\w*|no (conmutar|cortar|conmutado|apagar)|siempre encendid\\w*)\\b");
    private static final Pattern YES =
            Pattern.compile("y|yes|x|true|1|ja|j|oui|o|si|s|switched|geschaltet|schaltbar|commute|conmutado");
    private static final Pattern NO =
            Pattern.compile("n|no|false|0|nein|non|none|unswitched|ungeschaltet|always|dauernd|permanent|permanente?");
    private static final Pattern HERE =
            Pattern.compile("(place|placed|here|platzieren|hier|placer|ici|colocar|aqui)\\b.*");

    static boolean isYes(String plain) {
        return YES.matcher(plain).matches();
    }

    static boolean isNo(String plain) {
        return NO.matcher(plain).matches();
    }

    /** Asks for a place for life-safety equipment. */
    static boolean isHere(String plain) {
        return HERE.matcher(plain).matches();
    }

    static boolean saysLifeSafety(String plain) {
        return FIRE.matcher(plain).find() || EMERGENCY.matcher(plain).find();
    }

    static boolean saysLeaveOn(String plain) {
        return LEAVE_ON.matcher(plain).find();
    }

    /** Which thing that is asked about the words name; empty where they name none. */
    static Optional<String> asked(String plain) {
        if (UPS.matcher(plain).find()) {
            return Optional.of("an uninterruptible supply runs its battery down where its input is switched off");
        }
        return NETWORK_CORE.matcher(plain).find()
                ? Optional.of("the core of a network takes the control of everything else with it")
                : Optional.empty();
    }

    /** Where to look up why others feed it. */
    static String clauses(String plain) {
        return FIRE.matcher(plain).find() ? "NEC 760.41, 760.121; IEC 60364-5-56" : "NEC 700.10(B); IEC 60364-5-56";
    }

    boolean isSwitched() {
        return this == SWITCHED;
    }
}
