package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.drawing.Sheet;
import java.util.Locale;

/** A sheet of a drawing as an SVG for the page; texts as wide as they were laid out, whatever font draws them. */
final class SheetSvg {
    private SheetSvg() {}

    static String of(DrawnDiagram drawn, Sheet sheet) {
        StringBuilder svg = new StringBuilder(format(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"sheet\" role=\"img\" viewBox=\"0 0 %s %s\"><title>%s</title>",
                Sheet.WIDTH, Sheet.HEIGHT, Harmless.xml(drawn.title(sheet) + ". " + drawn.inWords())));
        for (Sheet.Line line : sheet.lines()) {
            svg.append(format(
                    "<line x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\"%s/>",
                    line.x1(), line.y1(), line.x2(), line.y2(), line.isHeavy() ? " class=\"heavy\"" : ""));
        }
        for (Sheet.Circle circle : sheet.circles()) {
            svg.append(format("<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\"/>", circle.x(), circle.y(), circle.radius()));
        }
        for (Sheet.Text text : sheet.texts()) {
            svg.append(format(
                    "<text x=\"%.2f\" y=\"%.2f\" textLength=\"%.2f\" font-size=\"%.1f\"%s>%s</text>",
                    text.left(),
                    text.y(),
                    text.width(),
                    text.size(),
                    text.isBold() ? " font-weight=\"bold\"" : "",
                    Harmless.xml(text.text())));
        }
        return svg.append("</svg>").toString();
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
