package evenrise.solver.exchange;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a row of a table of prices may be about, with the columns that it takes. */
enum PricedKind {
    CURRENCY("its name, such as EUR", PriceColumn.NAME),
    SOURCE("where the prices are from and of which day", PriceColumn.NAME),
    PANEL(
            "a type of panel",
            PriceColumn.NAME,
            PriceColumn.SLOTS,
            PriceColumn.UP_TO_AMPS,
            PriceColumn.NEUTRAL,
            PriceColumn.NUMBERING,
            PriceColumn.FLOOR,
            PriceColumn.PRICE,
            PriceColumn.BREAKS),
    BOARD(
            "a type of control board, by its id in projects: outputs and times are theirs",
            PriceColumn.NAME,
            PriceColumn.PRICE,
            PriceColumn.BREAKS),
    BREAKER(
            "a kind of breaker",
            PriceColumn.POLES,
            PriceColumn.UP_TO_AMPS,
            PriceColumn.SWITCHED,
            PriceColumn.PRICE,
            PriceColumn.BREAKS),
    TRANSFORMER(
            "a kind of transformer",
            PriceColumn.UP_TO_KVA,
            PriceColumn.CONNECTION,
            PriceColumn.PRICE,
            PriceColumn.BREAKS),
    NODE("a board between supply and panels", PriceColumn.UP_TO_AMPS, PriceColumn.PRICE, PriceColumn.BREAKS),
    FEEDER(
            "the device before a panel or node, and its cable",
            PriceColumn.UP_TO_AMPS,
            PriceColumn.PRICE,
            PriceColumn.BREAKS,
            PriceColumn.PER_METRE),
    CONTACTOR("a kind of contactor", PriceColumn.POLES, PriceColumn.UP_TO_AMPS, PriceColumn.PRICE, PriceColumn.BREAKS),
    CABLE(
            "a cable of circuits",
            PriceColumn.POLES,
            PriceColumn.UP_TO_AMPS,
            PriceColumn.PER_METRE,
            PriceColumn.CONDUIT,
            PriceColumn.HOURS),
    LEAD_BETWEEN_PANELS("what a control lead to another panel costs more", PriceColumn.PRICE),
    WORK(
            "work for one pole, lead, lead between panels, board, panel, node or contactor: its price, or its hours",
            PriceColumn.NAME,
            PriceColumn.PRICE,
            PriceColumn.HOURS),
    HOUR(
            "the price of an hour by day or night; of night, the part of all hours",
            PriceColumn.NAME,
            PriceColumn.PRICE,
            PriceColumn.PERCENT),
    PERCENTAGE(
            "what is added, in the order of rows, of material, labour, material-and-labour or all-above",
            PriceColumn.NAME,
            PriceColumn.PERCENT,
            PriceColumn.OF),
    EXCLUSION("what no price covers", PriceColumn.NAME);

    private final String meaning;
    private final List<PriceColumn> columns;

    PricedKind(String meaning, PriceColumn... columns) {
        this.meaning = meaning;
        this.columns = List.of(columns);
    }

    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    String meaning() {
        return meaning;
    }

    List<PriceColumn> columns() {
        return columns;
    }

    static Optional<PricedKind> of(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        return Stream.of(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }
}
