package evenrise.solver.report;

import evenrise.model.plan.Cautions;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** The sheets that go to the panel: one a stage, plain, to be printed and ticked off. */
public final class WorkSheetText {
    private static final String BLANK = "________";

    private WorkSheetText() {}

    /** Every sheet, each begun by a form feed but the first, so that a printer takes a new page. */
    public static String pages(WorkSheets sheets) {
        List<String> pages = sheets.sheets().stream()
                .map(each -> String.join("\n", sheet(sheets.project().name(), each)) + "\n")
                .toList();
        return pages.isEmpty()
                ? "Nothing is to be done.\n\n" + String.join("\n", CautionText.lines(Cautions.ALL, Paint.NONE)) + "\n"
                : String.join("\f", pages);
    }

    private static List<String> sheet(String project, WorkSheet sheet) {
        List<List<String>> sections = new ArrayList<>();
        sections.add(head(project, sheet));
        Section caution = new Section(Paint.NONE, "Caution").text(sheet.lockOut());
        sheet.notes().forEach(caution::text);
        sections.add(caution.lines());
        sections.add(steps(sheet));
        if (!sheet.broken().isEmpty()) {
            Section broken = new Section(Paint.NONE, "Broken on the way");
            sheet.broken().forEach(broken::item);
            sections.add(broken.lines());
        }
        sections.add(back(sheet));
        List<String> pictures = new ArrayList<>();
        sheet.pictures().stream()
                .filter(PanelPicture::isOtherBreakers)
                .forEach(each -> pictures.addAll(PanelPictureText.lines(each)));
        if (!pictures.isEmpty()) {
            sections.add(pictures);
        }
        sections.add(currents(sheet));
        Section end =
                new Section(Paint.NONE, "After this stage").text(sheet.end().sentence());
        sheet.end().broken().forEach(end::item);
        end.text("Done by ____________________   Checked by ____________________   Date ____________");
        sections.add(end.lines());
        sections.add(CautionText.lines(Cautions.ALL, Paint.NONE));
        return Sections.joined(sections);
    }

    private static List<String> head(String project, WorkSheet sheet) {
        Section head = new Section(Paint.NONE, project + ": stage " + sheet.number() + " of " + sheet.stages());
        head.text(sheet.off());
        head.text(sheet.dead());
        if (sheet.minutes() > 0) {
            head.text("About " + Math.round(sheet.minutes())
                    + " min for one crew, by minutes of each kind of work; beside each step stands the minute at which"
                    + " it begins. Begun at ________ Done at ________");
        }
        if (!sheet.told().isEmpty()) {
            head.text("Out meanwhile, wholly or in part: " + String.join(", ", sheet.told())
                    + ". Tell whoever uses or runs it, before the first step and when all is on again: name"
                    + " ____________________ told at ________ again at ________");
        }
        return head.lines();
    }

    private static List<String> steps(WorkSheet sheet) {
        List<String> lines = new ArrayList<>(new Section(Paint.NONE, "Steps").lines());
        for (WorkSheet.Line step : sheet.steps()) {
            String at = step.atMinute().isPresent()
                    ? String.format(
                            Locale.ROOT, "%4d ", Math.round(step.atMinute().getAsDouble()))
                    : "";
            lines.addAll(Wrap.lines(String.format(Locale.ROOT, "  [ ] %2d %s ", step.number(), at), step.text()));
        }
        return lines;
    }

    private static List<String> back(WorkSheet sheet) {
        Section back = new Section(Paint.NONE, "If a step fails").text(sheet.wayBack());
        List<WorkSheet.Line> lines = new ArrayList<>(sheet.steps());
        Collections.reverse(lines);
        lines.forEach(step -> step.back().ifPresent(how -> back.item("step " + step.number() + ": " + how)));
        return back.lines();
    }

    private static List<String> currents(WorkSheet sheet) {
        Section section = new Section(Paint.NONE, "Check afterwards: current of each line, A, no more than");
        section.text(sheet.howCurrentsAreRead());
        Table table = new Table()
                .words("where")
                .words("line")
                .number("idle")
                .number("read")
                .number("full use")
                .number("allowed")
                .number("read at full use");
        String last = "";
        for (MeteredLine each : sheet.currents()) {
            table.row(
                    each.where().equals(last) ? "" : each.where(),
                    each.line(),
                    each.idle(),
                    BLANK,
                    each.full(),
                    each.allowed(),
                    BLANK);
            last = each.where();
        }
        return section.table(table).lines();
    }
}
