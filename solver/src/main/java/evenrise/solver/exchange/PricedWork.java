package evenrise.solver.exchange;

import evenrise.model.project.CatalogueBuilder;
import evenrise.model.project.LabourHours;
import evenrise.model.project.LabourHoursBuilder;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Work, as rows of a table of prices state it: by its price, or by hours and their rate. */
final class PricedWork {
    private static final String WORK = "pole, lead, lead between panels, board, panel, node or contactor";

    private final CatalogueBuilder catalogue;
    private final LabourHoursBuilder hours = LabourHours.builder();
    private Optional<String> neededBy = Optional.empty();
    private boolean hasRate;

    PricedWork(CatalogueBuilder catalogue) {
        this.catalogue = catalogue;
    }

    void take(PriceCells cells) {
        OptionalDouble price = cells.maybePrice();
        OptionalDouble of = cells.number(PriceColumn.HOURS);
        String what = cells.needed(PriceColumn.NAME).toLowerCase(Locale.ROOT);
        if (of.isPresent()) {
            needsRate("work, " + what);
        }
        switch (what) {
            case "pole" -> {
                catalogue.labourPerPole(price);
                hours.perPole(of);
            }
            case "lead" -> {
                catalogue.labourPerLead(price);
                hours.perLead(of);
            }
            case "lead between panels" -> {
                hours.perLeadBetweenPanels(of);
                if (price.isPresent()) {
                    cells.problem(
                            PriceColumn.PRICE, "has no place here: hours, or a row of the kind lead between panels");
                }
            }
            case "board" -> {
                catalogue.labourPerBoard(price);
                hours.perBoard(of);
            }
            case "panel" -> {
                catalogue.labourPerPanel(price);
                hours.perPanel(of);
            }
            case "node" -> {
                catalogue.labourPerNode(price);
                hours.perNode(of);
            }
            case "contactor" -> {
                catalogue.labourPerContactor(price);
                hours.perContactor(of);
            }
            default -> cells.problem(PriceColumn.NAME, "is '" + what + "', expected " + WORK);
        }
    }

    /** @param what states hours */
    void needsRate(String what) {
        neededBy = neededBy.or(() -> Optional.of(what));
    }

    /** What is wrong where hours are stated and no rate is. */
    Optional<String> lacksRate() {
        return hasRate
                ? Optional.empty()
                : neededBy.map(
                        what -> "hours of " + what + " need the price of an hour: a row of the kind hour, name day.");
    }

    Optional<LabourHours> hours() {
        return hasRate ? Optional.of(hours.build()) : Optional.empty();
    }

    void hour(PriceCells cells) {
        switch (cells.needed(PriceColumn.NAME).toLowerCase(Locale.ROOT)) {
            case "day" -> {
                hours.rate(cells.neededNumber(PriceColumn.PRICE));
                hasRate = true;
            }
            case "night" -> hours.nightRate(cells.number(PriceColumn.PRICE)).nightPercent(cells.percent());
            default -> cells.problem(PriceColumn.NAME, "is neither day nor night");
        }
    }
}
