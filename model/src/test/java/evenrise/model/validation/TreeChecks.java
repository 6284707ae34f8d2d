package evenrise.model.validation;

import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;

import evenrise.model.electrical.breaker.TapConductor;
import evenrise.model.electrical.breaker.TransformerProtection;
import evenrise.model.plan.Quantity;
import evenrise.model.project.Cable;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;

/** Outside values of faults behind transformers and of their protection. */
final class TreeChecks extends CheckList {
    private static final String FAULTS = "Faults behind transformers";
    private static final String PROTECTION = "Protection of transformers";
    private static final String COMPLEX = "hand calculation in complex ohms, the network's zero sequence blocked";
    private static final String POINT_TO_POINT =
            "point-to-point method of handbooks by hand, which adds impedances as numbers: a little less";

    static List<Check> all() {
        TreeChecks table = new TreeChecks();
        table.faults();
        table.protection();
        return List.copyOf(table.checks);
    }

    /** 30,000 A at 480 V, 75 kVA with 4.5 % at the least (5 % on its nameplate), X/R 2.2, then 50 ft of 3/0 in steel. */
    private void faults() {
        List<Quantity> ours =
                ElectricalReview.of(Layout.of(plant(), aPlan().build())).quantities();
        String terminals = "30,000 A at 480 V, 75 kVA 480 to 208Y/120 V, 4.5 %, X/R 2.2";
        String behind = terminals + ", then 50 ft of 3/0 in steel at 20 °C";
        number(FAULTS, "three phases", behind, 3_840, 2, "A", figure(ours, "greatest fault current"), COMPLEX);
        number(FAULTS, "to neutral", behind, 3_472, 2, "A", figure(ours, "greatest fault current to neutral"), COMPLEX);
        number(FAULTS, "three phases", behind, 3_802, 50, "A", figure(ours, "greatest fault current"), POINT_TO_POINT);
    }

    private void protection() {
        String inputs = "75 kVA, 480 V to 208Y/120 V";
        String source = "hardhatmath.com, NEC table 450.3(B) worked";
        double primary = 75_000 / (480 * Math.sqrt(3));
        double secondary = 75_000 / (208 * Math.sqrt(3));
        number(
                PROTECTION,
                "250 % of the primary current",
                inputs,
                225.5,
                0.05,
                "A",
                TransformerProtection.primaryAmps(primary),
                source);
        number(
                PROTECTION,
                "device on the secondary",
                inputs,
                300,
                0,
                "A",
                TransformerProtection.secondaryAmps(secondary),
                source);
        number(
                PROTECTION,
                "primary device alone",
                inputs,
                125,
                0,
                "A",
                TransformerProtection.primaryAloneAmps(primary),
                "by hand: 112.8 A, next standard rating");
        number(
                PROTECTION,
                "secondary conductors up to 25 ft behind 225 A",
                inputs,
                173.1,
                0.05,
                "A",
                TransformerProtection.conductorAmps(225 * 480.0 / 208, 7.6),
                "by hand: 225·(480/208)/3");
        number(
                PROTECTION,
                "tap of 25 ft",
                "a device of 800 A before it",
                266.7,
                0.05,
                "A",
                TapConductor.leastAmps(800, 25 * 0.3048),
                "by hand: 800/3");
    }

    private static double figure(List<Quantity> quantities, String name) {
        return quantities.stream()
                .filter(each -> each.place().equals("P") && each.name().equals(name))
                .findFirst()
                .orElseThrow()
                .value();
    }

    private static Project plant() {
        Cable cable = Cable.builder()
                .lengthMetres(15.24)
                .size("3/0 AWG")
                .material(ConductorMaterial.COPPER)
                .conduit(Conduit.STEEL)
                .build();
        return aProject()
                .supply(aSupply().lineToNeutralVolts(480 / Math.sqrt(3)))
                .electrical(Electrical.builder()
                        .practice(Practice.NEC)
                        .source(SupplySource.builder()
                                .kind(SourceKind.UTILITY)
                                .faultAmps(30_000)
                                .xOverR(1000)
                                .build())
                        .build())
                .panels(aPanel("P"))
                .build()
                .withPanels(List.of(aPanel("P")
                        .feeder(Feeder.builder().cable(cable).breakerAmps(200).build())
                        .build()
                        .withFedFrom(Optional.of("T"))))
                .withNodes(List.of(DistributionNode.builder()
                        .id("T")
                        .ratedAmps(225)
                        .transformer(Optional.of(Transformer.builder()
                                .connection(TransformerConnection.DELTA_WYE)
                                .secondary(Secondary.builder()
                                        .system(PhaseSystem.THREE_PHASE)
                                        .lineToNeutralVolts(208 / Math.sqrt(3))
                                        .build())
                                .ratedKva(75)
                                .impedancePercent(5)
                                .xOverR(2.2)
                                .build()))
                        .build()));
    }
}
