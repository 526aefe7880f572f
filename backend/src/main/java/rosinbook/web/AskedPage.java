package rosinbook.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/** The page that somebody asked for before they had signed in; they go on there afterwards. */
final class AskedPage {
    /** The parameter of the sign-in page, and the field of its form. */
    static final String NAME = "to";

    private static final String FIRST = "/";
    private static final int LONGEST = 500;
    private static final Pattern QUERY = Pattern.compile("[A-Za-z0-9=&@,._~+%-]*");

    private AskedPage() {}

    /** The address of the sign-in page that leads to what is asked for now. */
    static String signIn(Context exchange) {
        String query = exchange.queryString();
        String page = of(query == null ? exchange.path() : exchange.path() + "?" + query);
        return page.equals(FIRST)
                ? "/sign-in"
                : "/sign-in?" + NAME + "=" + URLEncoder.encode(page, StandardCharsets.UTF_8);
    }

    /** An address as it was asked for, if it is that of a page of ours; the first page for any other, and for null. */
    static String of(String asked) {
        if (asked == null || asked.length() > LONGEST) {
            return FIRST;
        }
        String[] parts = asked.split("\\?", 2);
        boolean isOurs = PagesResource.isPage(parts[0])
                && (parts.length == 1 || QUERY.matcher(parts[1]).matches());
        return isOurs ? asked : FIRST;
    }
}
