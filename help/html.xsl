<?xml version="1.0" encoding="UTF-8"?>
<!-- SPDX-License-Identifier: GPL-3.0-or-later -->
<!-- A page of help for a browser: of Mallard as much as our pages use. $pages are the names of all of
     them, beside the one that is read. What has no rule here stops it. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform"
                xmlns:m="http://projectmallard.org/1.0/" xmlns:str="http://exslt.org/strings"
                exclude-result-prefixes="m str">
  <xsl:param name="pages"/>
  <xsl:output method="html" encoding="UTF-8" indent="no" doctype-system="about:legacy-compat"/>
  <xsl:strip-space elements="m:page m:section m:info m:list m:steps m:terms m:item m:table m:thead m:tbody m:tr m:td m:media m:note m:keyseq"/>

  <xsl:template match="/m:page">
    <html lang="en">
      <head>
        <meta name="viewport" content="width=device-width"/>
        <title><xsl:value-of select="m:title"/></title>
        <link rel="stylesheet" href="help.css"/>
      </head>
      <body>
        <xsl:if test="@id != 'index'">
          <nav><a href="index.html"><xsl:value-of select="document('index.page', /)/m:page/m:title"/></a></nav>
        </xsl:if>
        <main>
          <h1><xsl:apply-templates select="m:title/node()"/></h1>
          <xsl:apply-templates select="*[not(self::m:info or self::m:title)]"/>
          <xsl:if test="m:info/m:link[@type = 'seealso']">
            <nav>
              <xsl:for-each select="m:info/m:link[@type = 'seealso']">
                <p><xsl:call-template name="link"/></p>
              </xsl:for-each>
            </nav>
          </xsl:if>
        </main>
      </body>
    </html>
  </xsl:template>

  <!-- A section of the guide lists the pages that belong there. -->
  <xsl:template match="m:section">
    <xsl:variable name="place" select="concat(/m:page/@id, '#', @id)"/>
    <section id="{@id}">
      <h2><xsl:apply-templates select="m:title/node()"/></h2>
      <xsl:apply-templates select="*[not(self::m:title)]"/>
      <xsl:if test="/m:page/@type = 'guide'">
        <xsl:variable name="base" select="/"/>
        <ul class="topics">
          <xsl:for-each select="document(str:tokenize($pages), $base)/m:page
                                [m:info/m:link[@type = 'guide']/@xref = $place]">
            <xsl:sort select="m:info/m:title[@type = 'sort']" data-type="number"/>
            <li>
              <a href="{@id}.html"><xsl:value-of select="m:title"/></a>
              <p><xsl:value-of select="m:info/m:desc"/></p>
            </li>
          </xsl:for-each>
        </ul>
      </xsl:if>
    </section>
  </xsl:template>

  <xsl:template match="m:p"><p><xsl:apply-templates/></p></xsl:template>
  <xsl:template match="m:list"><ul><xsl:apply-templates/></ul></xsl:template>
  <xsl:template match="m:steps"><ol><xsl:apply-templates/></ol></xsl:template>
  <xsl:template match="m:item"><li><xsl:apply-templates/></li></xsl:template>
  <xsl:template match="m:terms"><dl><xsl:apply-templates/></dl></xsl:template>
  <xsl:template match="m:terms/m:item">
    <dt><xsl:apply-templates select="m:title/node()"/></dt>
    <dd><xsl:apply-templates select="*[not(self::m:title)]"/></dd>
  </xsl:template>
  <xsl:template match="m:note"><aside><xsl:apply-templates/></aside></xsl:template>
  <xsl:template match="m:media">
    <img src="{@src}" alt="{normalize-space(.)}"/>
  </xsl:template>
  <xsl:template match="m:screen"><pre><xsl:apply-templates/></pre></xsl:template>

  <xsl:template match="m:table"><table><xsl:apply-templates/></table></xsl:template>
  <xsl:template match="m:thead | m:tbody"><xsl:apply-templates/></xsl:template>
  <xsl:template match="m:tr"><tr><xsl:apply-templates/></tr></xsl:template>
  <xsl:template match="m:td"><td><xsl:apply-templates select="m:p/node()"/></td></xsl:template>
  <xsl:template match="m:thead/m:tr/m:td"><th><xsl:apply-templates select="m:p/node()"/></th></xsl:template>

  <xsl:template match="m:em"><em><xsl:apply-templates/></em></xsl:template>
  <xsl:template match="m:gui"><b><xsl:apply-templates/></b></xsl:template>
  <xsl:template match="m:key"><kbd><xsl:apply-templates/></kbd></xsl:template>
  <xsl:template match="m:keyseq">
    <xsl:for-each select="m:key">
      <xsl:if test="position() > 1">+</xsl:if>
      <xsl:apply-templates select="."/>
    </xsl:for-each>
  </xsl:template>
  <xsl:template match="m:cmd | m:file | m:input"><code><xsl:apply-templates/></code></xsl:template>
  <xsl:template match="m:link" name="link">
    <a href="{@xref}.html"><xsl:value-of select="document(concat(@xref, '.page'), /)/m:page/m:title"/></a>
  </xsl:template>

  <xsl:template match="*">
    <xsl:message terminate="yes">no rule for <xsl:value-of select="name()"/></xsl:message>
  </xsl:template>
</xsl:stylesheet>
