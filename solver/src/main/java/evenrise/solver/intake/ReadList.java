package evenrise.solver.intake;

/** A sheet that holds a list, with its headers. */
record ReadList(String sheet, Header header) {}
