package evenrise.solver.intake;

import evenrise.model.contract.Words;
import evenrise.model.intake.Columns;
import evenrise.solver.table.HeaderWords;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What a column may hold, with the words by which the trade heads it in English, German, French and Spanish. */
enum Meaning {
    TAG(
            Columns::tag,
            "tag",
            "tag no",
            "equipment tag",
            "asset tag",
            "ref",
            "reference",
            "mark",
            "equipment id",
            "id",
            "kennzeichen",
            "bmk",
            "repère",
            "referencia",
            "etiqueta"),
    QUANTITY_LOW(
            Columns::quantityLow,
            "low",
            "fewest",
            "at least",
            "qty low",
            "low qty",
            "qty min",
            "min qty",
            "qty least",
            "quantity low",
            "quantity min",
            "quantity minimum",
            "minimum quantity",
            "min quantity",
            "anzahl min",
            "min anzahl",
            "menge min",
            "mindestmenge",
            "quantité min",
            "qté min",
            "quantité minimale",
            "cantidad min",
            "cant min",
            "cantidad mínima"),
    QUANTITY_HIGH(
            Columns::quantityHigh,
            "high",
            "most",
            "at most",
            "qty high",
            "high qty",
            "qty max",
            "max qty",
            "qty most",
            "quantity high",
            "quantity max",
            "quantity maximum",
            "maximum quantity",
            "max quantity",
            "anzahl max",
            "max anzahl",
            "menge max",
            "höchstmenge",
            "quantité max",
            "qté max",
            "quantité maximale",
            "cantidad max",
            "cant max",
            "cantidad máxima"),
    QUANTITY(
            Columns::quantity,
            "quantity",
            "qty",
            "likely",
            "qty likely",
            "likely qty",
            "quantity likely",
            "likely quantity",
            "count",
            "pcs",
            "pieces",
            "anzahl",
            "anz",
            "stk",
            "stck",
            "st",
            "stück",
            "menge",
            "quantité",
            "qté",
            "qte",
            "nb",
            "nbre",
            "nombre",
            "cantidad",
            "cant"),
    NAME(
            Columns::name,
            "name",
            "item",
            "description",
            "equipment",
            "device",
            "what",
            "gear",
            "thing",
            "unit description",
            "model",
            "product",
            "load",
            "bezeichnung",
            "gerät",
            "beschreibung",
            "désignation",
            "appareil",
            "matériel",
            "descripción",
            "equipo",
            "artículo"),
    ROOM(
            Columns::room,
            "room",
            "rm",
            "where",
            "location",
            "place",
            "area",
            "raum",
            "ort",
            "standort",
            "local",
            "salle",
            "emplacement",
            "lieu",
            "sala",
            "ubicación",
            "wo"),
    RACK(Columns::rack, "rack", "cabinet", "schrank", "baie", "armoire", "bastidor"),
    ROLE(
            Columns::role,
            "role",
            "type",
            "category",
            "class",
            "function",
            "rolle",
            "art",
            "kategorie",
            "rôle",
            "catégorie",
            "fonction",
            "tipo",
            "categoría",
            "función"),
    ZONE(Columns::zone, "zone", "shutdown group", "group", "emergency group", "gruppe", "groupe", "zona", "grupo"),
    FEED(Columns::feed, "feed", "supply", "a/b", "redundancy", "path", "einspeisung", "alimentation", "alimentación"),
    FED_FROM(
            Columns::fedFrom,
            "fed from",
            "panel",
            "distribution board",
            "verteiler",
            "verteilung",
            "tableau",
            "cuadro"),
    CIRCUIT(
            Columns::circuit,
            "circuit",
            "circuit no",
            "circuit number",
            "circuits",
            "ckt",
            "ckt no",
            "cct",
            "stromkreis",
            "stromkreis nr",
            "départ",
            "circuito"),
    BREAKER(
            Columns::breaker,
            "breaker",
            "breaker size",
            "circuit breaker",
            "cb",
            "mcb",
            "ocpd",
            "ocp",
            "overcurrent protection",
            "mocp",
            "mop",
            "max ocpd",
            "protection",
            "trip",
            "absicherung",
            "sicherung",
            "vorsicherung",
            "leitungsschutzschalter",
            "ls schalter",
            "disjoncteur",
            "protección",
            "interruptor",
            "interruptor automático",
            "magnetotérmico"),
    CONTACTOR(Columns::contactor, "contactor", "schütz", "contacteur", "contactor de potencia"),
    SWITCHED(
            Columns::switched,
            "switched",
            "switching",
            "sequenced",
            "geschaltet",
            "schaltbar",
            "commuté",
            "commutation",
            "conmutado"),
    LIFE_SAFETY(
            Columns::lifeSafety,
            "life safety",
            "safety service",
            "emergency system",
            "sicherheitsstromversorgung",
            "sicherheit",
            "sécurité",
            "seguridad"),
    SYSTEM(Columns::system, "system", "switching system", "hall", "anlage", "système", "sistema"),
    NOTES(
            Columns::notes,
            "notes",
            "note",
            "remarks",
            "remark",
            "comments",
            "comment",
            "bemerkungen",
            "bemerkung",
            "hinweis",
            "remarques",
            "remarque",
            "commentaire",
            "observaciones",
            "observations",
            "observation",
            "anmerkung",
            "anmerkungen",
            "notas",
            "nota"),
    OUTLET(
            Columns::outlet,
            "outlet",
            "plug",
            "receptacle",
            "socket",
            "steckdose",
            "stecker",
            "prise",
            "fiche",
            "toma",
            "enchufe"),
    LINE_TO_NEUTRAL(
            Columns::lineToNeutral,
            "line to neutral",
            "voltage to neutral",
            "phase voltage",
            "l n",
            "sternspannung",
            "tension simple",
            "tensión de fase"),
    PHASES(Columns::phases, "phases", "phase", "ph", "ø", "no of phases", "phasen", "phasenzahl", "fases"),
    VOLTS(
            Columns::volts,
            "voltage",
            "volt",
            "supply voltage",
            "operating voltage",
            "nennspannung",
            "betriebsspannung",
            "tension nominale",
            "volts",
            "v",
            "spannung",
            "tension",
            "tensión",
            "voltaje"),
    WATTS(
            Columns::watts,
            "watts",
            "wattage",
            "power draw",
            "power consumption",
            "electrical",
            "electrical data",
            "power req",
            "power requirements",
            "anschlusswert",
            "anschlussleistung",
            "leistungsaufnahme",
            "puissance nominale",
            "power",
            "w",
            "kw",
            "consumption",
            "leistung",
            "puissance",
            "potencia",
            "consumo"),
    SHAFT_POWER(Columns::shaftPower, "shaft power", "hp", "horsepower", "motor hp", "wellenleistung", "ch", "ps"),
    VOLT_AMPS(
            Columns::voltAmps,
            "va",
            "kva",
            "apparent power",
            "scheinleistung",
            "puissance apparente",
            "potencia aparente"),
    AMPS(
            Columns::amps,
            "amps",
            "fla",
            "rla",
            "full load amps",
            "full load current",
            "amperage",
            "max amps",
            "nennstrom",
            "stromaufnahme",
            "intensité nominale",
            "ampere",
            "current",
            "a",
            "max current",
            "running current",
            "strom",
            "courant",
            "intensité",
            "corriente",
            "intensidad"),
    IDLE(Columns::idle, "idle", "idle current", "standby", "quiescent", "leerlauf", "ruhestrom", "repos", "reposo"),
    INRUSH(
            Columns::inrush,
            "inrush",
            "inrush current",
            "peak current",
            "einschaltstrom",
            "courant d'appel",
            "appel",
            "arranque",
            "pico"),
    POWER_FACTOR(
            Columns::powerFactor,
            "power factor",
            "pf",
            "cos phi",
            "cos φ",
            "cosφ",
            "leistungsfaktor",
            "facteur de puissance",
            "factor de potencia"),
    OFF_DELAY(
            Columns::offDelay,
            "off delay",
            "off after",
            "cooling time",
            "run on",
            "nachlauf",
            "retard à l'arrêt",
            "retardo de apagado");

    /** By any of which a list may say what a piece draws. */
    static final List<Meaning> DRAWS = List.of(WATTS, VOLT_AMPS, AMPS);

    private final Function<Columns, Optional<String>> mapped;
    private final List<String> words;

    /** Longer texts are no headers. */
    private static final int LONGEST_HEADER = 200;

    Meaning(Function<Columns, Optional<String>> mapped, String... words) {
        this.mapped = mapped;
        this.words = Stream.of(words).map(HeaderWords::plain).toList();
    }

    Optional<String> mapped(Columns columns) {
        return mapped.apply(columns);
    }

    /** Its field's name in a mapping's columns. */
    String key() {
        StringBuilder component = new StringBuilder();
        for (String word : name().toLowerCase(Locale.ROOT).split("_")) {
            component.append(component.isEmpty() ? word : Character.toUpperCase(word.charAt(0)) + word.substring(1));
        }
        return Words.key(component.toString());
    }

    boolean isAmount() {
        return ordinal() >= LINE_TO_NEUTRAL.ordinal() || this == QUANTITY || saysEnd();
    }

    /** Whether it is an end of a range; words such as low say so only where they stand alone. */
    private boolean saysEnd() {
        return this == QUANTITY_LOW || this == QUANTITY_HIGH;
    }

    /** As a person calls it. */
    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * How well a header says this: 2 where it is one of the words, 1 where it begins or ends with one, else 0.
     *
     * @param plain the header, {@link HeaderWords#plain}
     */
    int match(String plain) {
        if (plain.isEmpty() || plain.length() > LONGEST_HEADER) {
            return 0;
        }
        int best = 0;
        for (String own : words) {
            if (plain.equals(own)) {
                return 2;
            }
            if (!saysEnd() && own.length() > 2 && (plain.startsWith(own + " ") || plain.endsWith(" " + own))) {
                best = 1;
            }
        }
        return best;
    }
}
