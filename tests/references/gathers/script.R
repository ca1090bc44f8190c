# Reference values for ranges, trends and charts of several gathers of one flock. Run by hand:
#   Rscript tests/references/gathers/script.R
# The spread between gathers is that of survey::svymean with each gather a cluster; ranges from R's own distribution
# functions; the scatter about a line from stats::lm; chart limits from VGAM's beta-binomial.
suppressMessages({library(survey); library(VGAM); library(jsonlite)})
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
set.seed(18)
prior <- 3; rho <- 0.03

clustered <- function(lame, seen) {
  sheep <- data.frame(gather = rep(seq_along(seen), seen),
                      lame = unlist(mapply(function(x, n) rep(c(1, 0), c(x, n - x)), lame, seen, SIMPLIFY = FALSE)))
  design <- svydesign(ids = ~gather, weights = ~1, data = sheep)
  p <- mean(sheep$lame)
  if (p == 0 || p == 1) return(1)
  as.numeric(SE(svymean(~lame, design)))^2 / (p * (1 - p) / nrow(sheep))
}
effective <- function(lame, seen, conf) {
  N <- sum(seen); size <- sum(seen^2) / N; weighty <- N / size
  joined <- max(1, (prior * (1 + (size - 1) * rho) + (weighty - 1) * clustered(lame, seen)) / (prior + weighty - 1))
  tail <- (1 - conf) / 2
  N / joined * (qnorm(tail) / qt(tail, prior + weighty - 1))^2
}
ranges <- function(lame, seen, conf) {
  n <- effective(lame, seen, conf); p <- sum(lame) / sum(seen); x <- p * n; a <- (1 - conf) / 2; z <- qnorm(1 - a)
  middle <- (p + z^2 / 2 / n) / (1 + z^2 / n)
  reach <- z / (1 + z^2 / n) * sqrt(p * (1 - p) / n + z^2 / 4 / n^2)
  list(lame = lame, seen = seen, confidence = conf, effective = n,
       wilson = c(if (x == 0) 0 else middle - reach, if (x == n) 1 else middle + reach),
       exact = c(if (x == 0) 0 else qbeta(a, x, n - x + 1), if (x == n) 1 else qbeta(1 - a, x + 1, n - x)),
       jeffreys = c(if (x == 0) 0 else qbeta(a, x + .5, n - x + .5), if (x == n) 1 else qbeta(1 - a, x + .5, n - x + .5)))
}
trend <- function(days, lame, seen) {
  p <- sum(lame) / sum(seen); q <- lame / seen; N <- sum(seen); freedom <- length(days) - 2
  fit <- lm(q ~ days, weights = seen)
  found <- if (freedom == 0) 1 else summary(fit)$sigma^2 / (p * (1 - p))
  size <- sum(seen^2) / N
  joined <- max(1, (prior * (1 + (size - 1) * rho) + freedom * found) / (prior + freedom))
  slope <- unname(coef(fit)[2])
  se <- sqrt(joined * p * (1 - p) / sum(seen * (days - sum(days * seen) / N)^2))
  list(days = days, lame = lame, seen = seen, change = 30 * slope, z = slope / se,
       p = 2 * pt(-abs(slope / se), prior + freedom))
}
flock <- function(m) {
  seen <- sample(20:400, m, replace = TRUE)
  list(seen = seen, lame = rbinom(m, seen, rbeta(m, 2, 30)))
}
fixed <- list(list(lame = c(4, 9, 3, 12), seen = c(100, 110, 95, 120)), list(lame = c(4, 9), seen = c(100, 110)),
              list(lame = c(1, 0), seen = c(30, 20)), list(lame = c(0, 0, 0), seen = c(50, 60, 40)),
              list(lame = c(12, 8, 4), seen = c(100, 100, 100)), list(lame = c(2, 6, 3), seen = c(60, 60, 60)),
              list(lame = c(5, 11, 4), seen = c(80, 80, 80)), list(lame = c(7, 17, 8), seen = c(140, 140, 140)))
flocks <- c(fixed, lapply(c(2, 2, 3, 3, 4, 5, 6, 8, 12, 12, 24, 52), flock))
sets <- do.call(c, lapply(flocks, function(f) lapply(c(.5, .9, .95, .99), function(conf) ranges(f$lame, f$seen, conf))))
trends <- lapply(flocks, function(f) if (sum(f$lame) > 0) trend(46000 + 30 * seq_along(f$seen) + (seq_along(f$seen) %% 4), f$lame, f$seen))
trends <- c(Filter(Negate(is.null), trends), list(trend(c(46082, 46112, 46142), c(12, 8, 4), c(100, 100, 100))))
spread <- expand.grid(n = c(2, 20, 60, 150, 420, 3000), share = c(.01, .05, .12, .5), inflation = c(1.2, 1.8, 4, 15))
spread <- spread[spread$inflation < spread$n, ]
limits <- lapply(seq_len(nrow(spread)), function(i) {
  n <- spread$n[i]; p <- spread$share[i]; r <- (spread$inflation[i] - 1) / (n - 1); total <- (1 - r) / r
  up <- cumsum(dbetabinom.ab(0:n, n, p * total, (1 - p) * total))
  list(n = n, share = p, inflation = spread$inflation[i], low = which(up >= .00135)[1] - 1, high = which(up >= 1 - .00135)[1] - 1)
})
# Laney's p' chart: limits of three standard deviations, widened by the mean step between neighbours; never narrower than
# by chance.
widened <- function(z) max(1, mean(abs(diff(z))) / (2 / sqrt(pi)))
laney <- lapply(Filter(function(f) length(f$seen) > 3 && sum(f$lame) > 0, flocks), function(f) {
  p <- sum(f$lame) / sum(f$seen); s <- sqrt(p * (1 - p) / f$seen)
  reach <- 3 * widened((f$lame / f$seen - p) / s) * s
  list(lame = f$lame, seen = f$seen, centre = p, low = pmax(p - reach, 0), high = pmin(p + reach, 1))
})
# The same month of other years: three years of twelve gathers, each month with a level of its own.
months <- rep(1:12, 3); years <- rep(2023:2025, each = 12)
seen <- sample(60:200, 36, replace = TRUE)
lame <- rbinom(36, seen, 0.05 + 0.03 * sin(2 * pi * months / 12) + rbeta(36, 1, 60))
level <- lapply(1:36, function(i) { o <- months == months[i] & years != years[i]
  list(p = sum(lame[o]) / sum(seen[o]), n = sum(seen[o]), size = sum(seen[o]^2) / sum(seen[o])) })
P <- sapply(level, `[[`, "p"); N <- sapply(level, `[[`, "n"); S <- sapply(level, `[[`, "size")
wide <- widened(((lame / seen - P) / sqrt(P * (1 - P) * (1 / seen + 1 / N)))[P > 0])^2
r <- (wide - 1) / (sum(seen^2) / sum(seen) - 1)
own <- t(sapply(1:36, function(i) {
  n <- seen[i]; p <- (P[i] * N[i] + .5) / (N[i] + 1)
  v <- 1 + (n - 1) * r + n / N[i] * (1 + (S[i] - 1) * r)
  total <- (n - 1) / (v - 1) - 1
  up <- cumsum(dbetabinom.ab(0:n, n, p * total, (1 - p) * total))
  c(which(up >= .00135)[1] - 1, which(up >= 1 - .00135)[1] - 1) / n
}))
season <- list(days = as.integer(as.Date(sprintf("%d-%02d-15", years, months)) - as.Date("1899-12-30")),
               lame = lame, seen = seen, centre = P, low = own[, 1], high = own[, 2])

student <- lapply(c(.5, .8, .95, .99, .9999), function(conf) lapply(c(1, 2, 3, 3.7, 10, 54.2, 1000, 1e6), function(df)
  list(confidence = conf, freedom = df, score = qt(1 - (1 - conf) / 2, df), at = c(.1, 2, 9), p = 2 * pt(-c(.1, 2, 9), df))))
write(toJSON(list(ranges = sets, trends = trends, limits = limits, laney = laney, season = season, student = do.call(c, student)),
             digits = I(16), auto_unbox = TRUE, pretty = FALSE), file.path(here, "values.json"))
