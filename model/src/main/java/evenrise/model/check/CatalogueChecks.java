package evenrise.model.check;

import evenrise.model.project.BoardType;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.ContactorPrice;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.LabourHours;
import evenrise.model.project.NodePrice;
import evenrise.model.project.PanelType;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.TransformerPrice;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Function;

/** Breaks of prices rise, and work has one price: its own, or its hours at their rate. */
final class CatalogueChecks {
    private final Consumer<Objection> found;

    private CatalogueChecks(Consumer<Objection> found) {
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        CatalogueChecks checks = new CatalogueChecks(found);
        List<BoardType> types = parts.project.boardTypes();
        for (int i = 0; i < types.size(); i++) {
            checks.breaks("/board_types/" + i, types.get(i).priceBreaks());
        }
        parts.project.catalogue().ifPresent(checks::check);
    }

    private void check(Catalogue catalogue) {
        all("panel_types", catalogue.panelTypes(), PanelType::priceBreaks);
        all("breakers", catalogue.breakers(), BreakerPrice::priceBreaks);
        all("transformers", catalogue.transformers(), TransformerPrice::priceBreaks);
        all("nodes", catalogue.nodes(), NodePrice::priceBreaks);
        all("feeders", catalogue.feeders(), FeederPrice::priceBreaks);
        all("contactors", catalogue.contactors(), ContactorPrice::priceBreaks);
        catalogue.labourHours().ifPresent(hours -> {
            once("pole", hours.perPole(), catalogue.labourPerPole());
            once("lead", hours.perLead(), catalogue.labourPerLead());
            once("board", hours.perBoard(), catalogue.labourPerBoard());
            once("panel", hours.perPanel(), catalogue.labourPerPanel());
            once("node", hours.perNode(), catalogue.labourPerNode());
            once("contactor", hours.perContactor(), catalogue.labourPerContactor());
        });
        night(catalogue.labourHours());
    }

    private <K> void all(String list, List<K> kinds, Function<K, List<PriceBreak>> breaks) {
        for (int i = 0; i < kinds.size(); i++) {
            breaks("/catalogue/" + list + "/" + i, breaks.apply(kinds.get(i)));
        }
    }

    private void breaks(String at, List<PriceBreak> breaks) {
        for (int i = 1; i < breaks.size(); i++) {
            int before = breaks.get(i - 1).from();
            if (breaks.get(i).from() <= before) {
                found.accept(Objection.error(
                        at + "/price_breaks/" + i + "/from",
                        "" + breaks.get(i).from(),
                        "more than " + before + ", where the one before it begins",
                        ""));
            }
        }
    }

    private void once(String what, OptionalDouble hours, OptionalDouble price) {
        if (hours.isPresent() && price.isPresent()) {
            found.accept(Objection.error(
                    "/catalogue/labour_hours/per_" + what,
                    Double.toString(hours.getAsDouble()),
                    "nothing, for labour_per_" + what + " states a price for the same work",
                    "Maybe leave one of the two out."));
        }
    }

    private void night(Optional<LabourHours> hours) {
        if (hours.filter(it -> it.nightPercent() > 0 && it.nightRate().isEmpty())
                .isPresent()) {
            found.accept(Objection.error(
                    "/catalogue/labour_hours/night_rate",
                    "missing",
                    "the price of an hour at night, for night_pct is not 0",
                    ""));
        }
    }
}
