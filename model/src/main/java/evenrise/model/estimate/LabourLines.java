package evenrise.model.estimate;

import evenrise.model.project.Catalogue;
import evenrise.model.project.LabourHours;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Work, as far as the project has something to work on. */
final class LabourLines {
    private LabourLines() {}

    /** None without a catalogue. */
    static List<BillLine> of(Project project) {
        List<BillLine> lines = new ArrayList<>();
        project.catalogue().ifPresent(catalogue -> add(project, catalogue, lines));
        return lines;
    }

    private static void add(Project project, Catalogue catalogue, List<BillLine> lines) {
        WorkPrice work = new WorkPrice(catalogue);
        int poles = project.loads().stream().mapToInt(Load::poles).sum();
        long leads = project.loads().stream().filter(PlantLines::hasLead).count();
        long contactors =
                project.loads().stream().filter(PlantLines::hasContactor).count();
        lines.add(work.line(
                "work: breaker and cable, a pole", count(poles), catalogue.labourPerPole(), LabourHours::perPole));
        lines.add(work.line("work: control lead", count(leads), catalogue.labourPerLead(), LabourHours::perLead));
        lines.add(work.line(
                "work: board", count(project.boards().size()), catalogue.labourPerBoard(), LabourHours::perBoard));
        lines.add(work.line(
                "work: panel", count(project.panels().size()), catalogue.labourPerPanel(), LabourHours::perPanel));
        if (!project.nodes().isEmpty()) {
            lines.add(work.line(
                    "work: distribution point",
                    count(project.nodes().size()),
                    catalogue.labourPerNode(),
                    LabourHours::perNode));
        }
        if (contactors > 0) {
            lines.add(work.line(
                    "work: contactor", count(contactors), catalogue.labourPerContactor(), LabourHours::perContactor));
        }
    }

    private static BigDecimal count(long count) {
        return BigDecimal.valueOf(count);
    }
}
