package evenrise.solver.exchange;

import evenrise.solver.table.HeaderWords;
import java.util.Optional;
import java.util.stream.Stream;

/** Columns of a table of prices, with what stands under each. */
enum PriceColumn {
    KIND("kind", "what the row prices; see the sheet 'how'"),
    NAME("name", "of a type of panel or board, a percentage, an exclusion, a kind of work"),
    SLOTS("slots", "of a panel"),
    POLES("poles", "of a breaker; of a contactor at most; of the breaker before a cable"),
    UP_TO_AMPS("up to A", "greatest rating of the kind; of a panel its rating"),
    UP_TO_KVA("up to kVA", "greatest power of a transformer"),
    CONNECTION("connection", "of a transformer; any where empty"),
    SWITCHED("switched", "yes for a breaker that a control board switches, else no; yes where empty"),
    NEUTRAL("neutral factor", "capacity of a panel's neutral over that of a line; 1 where empty"),
    NUMBERING("numbering", "of a panel's slots; alternating where empty"),
    FLOOR("floor m²", "that a panel takes, for offers"),
    PRICE("price", "of one; empty, or words such as on request, where it is not known"),
    BREAKS("price from", "prices from a number on, such as 5: 880; 20: 850"),
    PER_METRE("price per metre", "of a cable, or of a feeder's"),
    CONDUIT("conduit per metre", "for a cable"),
    HOURS("hours", "of work for one; for a metre of cable"),
    PERCENT("percent", "that is added; part of all hours worked at night"),
    OF("of", "what a percentage is taken of");

    private final String header;
    private final String meaning;

    PriceColumn(String header, String meaning) {
        this.header = header;
        this.meaning = meaning;
    }

    String header() {
        return header;
    }

    String meaning() {
        return meaning;
    }

    /** By the words of a header, however they are written. */
    static Optional<PriceColumn> of(String text) {
        String plain = HeaderWords.words(text);
        return Stream.of(values())
                .filter(column -> HeaderWords.words(column.header).equals(plain))
                .findFirst();
    }
}
